import { type Source, text } from '../../kernel/index.ts';
import type { FramingSpecies } from './bearing.ts';

export const GRAVITY_SOURCE: Source = {
  id: 'nds-12.3.3a',
  title: 'NDS specific gravity of framing lumber',
  edition: '2018, as transcribed',
  section: 'Table 12.3.3A',
  basis: 'second-hand',
};
export const GRAVITY_MEMORY_SOURCE: Source = {
  ...GRAVITY_SOURCE,
  id: 'nds-12.3.3a-memory',
  edition: '2018, not read for this species',
  basis: 'memory',
};

/** Oven-dry specific gravity, and whether it was read. Redwood takes its lower, open-grain value. */
export const SPECIFIC_GRAVITY: Record<FramingSpecies, { readonly gravity: number; readonly source: Source }> = {
  'douglas-fir-larch': { gravity: 0.5, source: GRAVITY_SOURCE },
  'southern-pine': { gravity: 0.55, source: GRAVITY_SOURCE },
  'hem-fir': { gravity: 0.43, source: GRAVITY_SOURCE },
  'spruce-pine-fir': { gravity: 0.42, source: GRAVITY_SOURCE },
  'spruce-pine-fir-south': { gravity: 0.36, source: GRAVITY_SOURCE },
  redwood: { gravity: 0.37, source: GRAVITY_MEMORY_SOURCE },
};

/** The framing species as a form offers them. */
export const FRAMING_SPECIES = [
  { value: 'douglas-fir-larch', label: text('Douglas fir-larch', 'Abeto Douglas-alerce') },
  { value: 'southern-pine', label: text('Southern pine', 'Pino del sur') },
  { value: 'hem-fir', label: text('Hem-fir', 'Hem-fir') },
  { value: 'spruce-pine-fir', label: text('Spruce-pine-fir', 'Pícea-pino-abeto') },
  { value: 'spruce-pine-fir-south', label: text('Spruce-pine-fir (South)', 'Pícea-pino-abeto (sur)') },
  { value: 'redwood', label: text('Redwood', 'Secuoya') },
] as const;
