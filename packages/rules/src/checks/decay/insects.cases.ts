import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const PAGES = 'pest trade pages as read: a rebuilt tube is active, an empty one proves nothing';
const TERMITE = { kind: 'subterranean-termite', probeDepthIn: 0 } as const;

export const cases: readonly CheckCase[] = [
  {
    name: 'a tube built again is evidence of active termites',
    origin: 'common-practice',
    source: PAGES,
    inputs: { ...TERMITE, tubesRebuilt: true },
    expect: {
      verdict: 'fails',
      ratio: null,
      severity: 'repair',
      values: { activity: 'active' },
      referrals: ['specialist'],
      repairs: ['specialist-visit'],
    },
  },
  {
    name: 'live insects are enough by themselves',
    origin: 'common-practice',
    source: PAGES,
    inputs: { ...TERMITE, liveSeen: true },
    expect: { verdict: 'fails', severity: 'repair' },
  },
  {
    name: 'a dry empty tube on sound wood does not prove that they are gone: evidence for a specialist',
    origin: 'common-practice',
    source: PAGES,
    inputs: { ...TERMITE, liveSeen: false, tubesRebuilt: false },
    expect: {
      verdict: 'fails',
      missing: [],
      severity: 'repair',
      values: { activity: 'not-seen', softIn: 0 },
      referrals: ['specialist'],
    },
  },
  {
    name: 'beetle holes in wood nobody probed go to an engineer as well',
    origin: 'published',
    source: 'Wood Handbook chapter 5: the inside can be gone behind small holes, strength cannot be told from looks',
    inputs: { kind: 'powderpost-beetle', liveSeen: false },
    expect: {
      verdict: 'undetermined',
      missing: ['probeDepthIn'],
      severity: 'engineer',
      referrals: ['specialist', 'engineer'],
    },
  },
  {
    name: 'live termites in wood nobody probed go to an engineer as well',
    origin: 'published',
    source: 'Wood Handbook chapter 5: strength cannot be told from looks',
    inputs: { kind: 'subterranean-termite', liveSeen: true },
    expect: { verdict: 'fails', severity: 'engineer', referrals: ['specialist', 'engineer'] },
  },
  {
    name: 'tubes on a board that carries nothing are still for a specialist, and for no engineer',
    origin: 'common-practice',
    source: 'severity table, row 7',
    inputs: { ...TERMITE, liveSeen: false, tubesRebuilt: false, probeDepthIn: 0.75 },
    situation: { carriesStoryOrRoof: false },
    expect: { verdict: 'fails', severity: 'repair', referrals: ['specialist'] },
  },
  {
    name: 'wood eaten just under 1/2 in deep is repaired when nobody said that it carries',
    origin: 'common-practice',
    source: 'an engineer from 1/2 in on',
    inputs: { ...TERMITE, liveSeen: false, tubesRebuilt: false, probeDepthIn: 0.4375 },
    expect: { verdict: 'fails', severity: 'repair', referrals: ['specialist'] },
  },
  {
    name: 'in a sill that carries the house any eaten wood goes to an engineer',
    origin: 'common-practice',
    source: 'an engineer at any depth in a part known to carry',
    inputs: { ...TERMITE, liveSeen: false, tubesRebuilt: false, probeDepthIn: 0.25 },
    situation: { carriesStoryOrRoof: true },
    expect: { verdict: 'fails', severity: 'engineer', referrals: ['specialist', 'engineer'] },
  },
  {
    name: 'holes in a board that carries nothing are for a specialist without a probe',
    origin: 'common-practice',
    source: 'severity table, row 7',
    inputs: { kind: 'powderpost-beetle', liveSeen: false },
    situation: { carriesStoryOrRoof: false },
    expect: { verdict: 'fails', missing: [], severity: 'repair', referrals: ['specialist'] },
  },
  {
    name: 'no sign seen on wood nobody probed cannot be told',
    origin: 'published',
    source: 'Wood Handbook chapter 5: the inside can be gone behind a sound face',
    inputs: { kind: 'none', liveSeen: false },
    expect: { verdict: 'undetermined', missing: ['probeDepthIn'], severity: 'record' },
  },
  {
    name: 'a probe that sinks in exactly 1/2 in is damage for an engineer even with nothing alive',
    origin: 'common-practice',
    source: 'soft wood is lost wood; an engineer from 1/2 in on',
    inputs: { ...TERMITE, liveSeen: false, tubesRebuilt: false, probeDepthIn: 0.5 },
    expect: {
      verdict: 'fails',
      severity: 'engineer',
      values: { softIn: 0.5 },
      repairs: ['specialist-visit', 'member-replace', 'member-sister', 'engineer-letter'],
    },
  },
  {
    name: 'no sign, nothing alive and a probe that sinks in exactly nothing meet',
    origin: 'hand-worked',
    source: 'nothing found where it was looked',
    inputs: { kind: 'none', liveSeen: false, probeDepthIn: 0 },
    expect: { verdict: 'meets', severity: 'record', referrals: [], values: { activity: 'no-sign' } },
  },
  {
    name: 'opening the wall does not make insects unsafe',
    origin: 'common-practice',
    source: 'severity table, row 3 names no insects',
    inputs: { ...TERMITE, liveSeen: true },
    situation: { disturbed: true },
    expect: { verdict: 'fails', severity: 'repair' },
  },
  {
    name: 'termite tubes not yet broken cannot be told',
    origin: 'hand-worked',
    source: 'no observation, no verdict',
    inputs: { ...TERMITE, liveSeen: false },
    expect: { verdict: 'undetermined', missing: ['tubesRebuilt'], severity: 'engineer' },
  },
];

/** What the rule asks. */
export const rule = text(
  'No sign of insects, none alive, no eaten wood. Anything else is evidence of them for a licensed specialist, never a diagnosis.',
  'Sin señales de insectos, ninguno vivo, sin madera comida. Lo demás es evidencia para un especialista con licencia, nunca un diagnóstico.',
);

/** What the check answers. */
export const values: ValueWords = {
  activity: {
    label: text('Activity', 'Actividad'),
    how: text('Active when anything lives or a tube was built again.', 'Activa si algo vive o rehicieron un tubo.'),
  },
  softIn: {
    label: text('Soft wood, deep', 'Madera blanda, fondo'),
    how: text('As probed.', 'Lo que entró la punta.'),
  },
};
