import type { Referral, Severity } from './outcome.ts';
import type { ElementRole } from './severity.ts';
import { type Source, type UnreadBasis, unreadBases } from './source.ts';
import { distinctTexts, type Text, text } from './text.ts';

const MAKE_SAFE = text(
  'Get everyone out from under it. Stop work there. Have it shored under the direction of a qualified person. Then record it.',
  'Que nadie quede debajo. Detenga el trabajo ahí. Haga apuntalar bajo la dirección de una persona calificada. Después, regístrelo.',
);
const HAZARD_MAKE_SAFE = text(
  'Stop work there, keep people and dust away, and wait for the licensed specialist.',
  'Pare el trabajo ahí, aleje a la gente y el polvo, y espere al especialista con licencia.',
);
const SCREENING = text(
  'Screening only, not a design: structural decisions belong to a licensed engineer and the building official; local codes govern.',
  'Solo es una revisión, no un diseño: las decisiones estructurales son de un ingeniero con licencia y del inspector de obras; rigen los códigos locales.',
);
const TREAT_AS = text(
  'This screen only says how to treat it; a licensed specialist decides. Unknown is treated as present.',
  'Esta revisión solo dice cómo tratarlo; decide un especialista con licencia. Lo desconocido se trata como presente.',
);

/** Sources by title and section, each once: several tables of one section count as one. */
const namesOf = (sources: readonly Source[]): string =>
  [...new Set(sources.map(({ title, section }) => `${title}, ${section}`))].join('; ');

/** What decided without being remembered is listed with its basis among the sources, and is not named here. */
function unreadWords(bases: readonly UnreadBasis[]): Text[] {
  const habit = bases.includes('common-practice');
  if (bases.includes('second-hand'))
    return [
      habit
        ? text(
            'Decided by a rule read second-hand and by common practice.',
            'Se decide con una regla leída de segunda mano y por práctica común.',
          )
        : text(
            'Decided by a rule read second-hand, not in its own document.',
            'Se decide con una regla leída de segunda mano, no en su propio documento.',
          ),
    ];
  if (!habit) return [];
  return [
    text(
      'Decided by common practice; no published source is known.',
      'Se decide por práctica común; no se conoce una fuente publicada.',
    ),
  ];
}

/** Said among the reasons of a verdict that hangs on these sources, when not all of them were read in print. */
export function sayUnread(deciding: readonly Source[]): Text[] {
  const remembered = deciding.filter(({ basis }) => basis === 'memory');
  const others = unreadWords(unreadBases(deciding));
  if (remembered.length === 0) return others;
  const names = namesOf(remembered);
  const confirm = text(
    `Decided from memory, confirm it before relying on this verdict: ${names}.`,
    `Se decide de memoria; confírmelo antes de usar este resultado: ${names}.`,
  );
  return [confirm, ...others];
}

function basisCaution(source: Source): Text | undefined {
  if (source.basis === 'memory')
    return text(
      `From memory, confirm before relying on it: ${source.title}, ${source.section}.`,
      `De memoria, confirme antes de usarlo: ${source.title}, ${source.section}.`,
    );
  if (source.basis === 'common-practice')
    return text(
      `Common practice with no published source: ${source.title}, ${source.section}.`,
      `Práctica común sin fuente publicada: ${source.title}, ${source.section}.`,
    );
  return undefined;
}

/** Sources are constants, so the sentence about each is worded once. */
const worded = new WeakMap<Source, Text | undefined>();

/** A caution for each source that was not read in print. Several tables of one section share its sentence, which is said once. */
export function unsourcedCautions(sources: readonly Source[]): Text[] {
  const cautions: Text[] = [];
  for (const source of sources) {
    if (!worded.has(source)) worded.set(source, basisCaution(source));
    const caution = worded.get(source);
    if (caution) cautions.push(caution);
  }
  return distinctTexts(cautions);
}

/** The cautions every outcome carries, the gravest first. */
export function standingCautions(role: ElementRole, severity: Severity, sources: readonly Source[]): Text[] {
  const first = severity === 'make-safe' ? [role === 'hazard' ? HAZARD_MAKE_SAFE : MAKE_SAFE] : [];
  return [...first, role === 'hazard' ? TREAT_AS : SCREENING, ...unsourcedCautions(sources)];
}

/** Referrals a severity brings by itself. */
export function severityReferrals(role: ElementRole, severity: Severity): Referral[] {
  if (severity !== 'make-safe' && severity !== 'engineer') return [];
  return [role === 'hazard' ? 'specialist' : 'engineer'];
}
