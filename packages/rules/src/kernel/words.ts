import type { Referral, Severity, Verdict } from './outcome.ts';
import { percent } from './quantity.ts';
import { type Text, text } from './text.ts';

export const FINDING_STATES = [
  'noted',
  'judged',
  'priced',
  'offered',
  'approved',
  'declined',
  'repaired',
  'proven',
  'withdrawn',
] as const;
export type FindingState = (typeof FINDING_STATES)[number];

export const CHANGE_ORDER_STATES = [
  'draft',
  'sent',
  'approved',
  'part-approved',
  'declined',
  'replaced',
  'set-aside',
] as const;
export type ChangeOrderState = (typeof CHANGE_ORDER_STATES)[number];

export const PHOTO_STAGES = ['found', 'opened', 'during', 'repaired', 'before-cover'] as const;
export type PhotoStage = (typeof PHOTO_STAGES)[number];

export const VERDICT_WORDS: Record<Verdict, Text> = {
  meets: text('Meets', 'Cumple'),
  fails: text('Does not meet', 'No cumple'),
  undetermined: text('Cannot tell yet', 'Aún no se puede saber'),
  'not-applicable': text('Does not apply', 'No corresponde'),
};

export const SEVERITY_WORDS: Record<Severity, Text> = {
  'make-safe': text('Make safe now', 'Asegurar ya'),
  engineer: text('Engineer decides', 'Decide un ingeniero'),
  repair: text('Repair before cover', 'Reparar antes de cubrir'),
  record: text('Note only', 'Solo anotar'),
};

/** What each severity means for the owner of the house, and what follows if nothing is done. */
export const SEVERITY_CONSEQUENCE: Record<Severity, Text> = {
  'make-safe': text(
    'It can hurt someone now. Keep away from it until it is propped up or closed off.',
    'Alguien se puede lastimar ya. No se acerque hasta que lo sostengan o lo cierren.',
  ),
  engineer: text(
    'It may be too weak for what it has to hold. An engineer says how to fix it. We leave it open until then.',
    'Puede ser muy débil para lo que debe sostener. Un ingeniero dice cómo repararlo. Hasta entonces se deja abierto.',
  ),
  repair: text(
    'It does not meet the rule. If it is covered up as it is, it can get worse where no one sees it.',
    'No cumple la regla. Si se cubre así, puede empeorar donde nadie lo ve.',
  ),
  record: text(
    'It needs no repair. We write it down so that you have it on file.',
    'No hay que reparar nada. Lo anotamos para que le quede por escrito.',
  ),
};

export const REFERRAL_WORDS: Record<Referral, Text> = {
  engineer: text('licensed engineer', 'ingeniero con licencia'),
  official: text('building official', 'inspector de obras'),
  specialist: text('licensed specialist', 'especialista con licencia'),
};

export const FINDING_WORDS: Record<FindingState, Text> = {
  noted: text('Noted', 'Anotado'),
  judged: text('Judged', 'Evaluado'),
  priced: text('Priced', 'Con precio'),
  offered: text('Offered', 'Ofrecido'),
  approved: text('Approved', 'Aprobado'),
  declined: text('Declined', 'Rechazado'),
  repaired: text('Repaired', 'Reparado'),
  proven: text('Proven', 'Comprobado'),
  withdrawn: text('Withdrawn', 'Retirado'),
};

export const CHANGE_ORDER_WORDS: Record<ChangeOrderState, Text> = {
  draft: text('Draft', 'Borrador'),
  sent: text('Sent', 'Enviado'),
  approved: text('Approved', 'Aprobado'),
  'part-approved': text('Part approved', 'Aprobado en parte'),
  declined: text('Declined', 'Rechazado'),
  replaced: text('Replaced', 'Reemplazado'),
  'set-aside': text('Set aside', 'Apartado'),
};

export const PHOTO_WORDS: Record<PhotoStage, Text> = {
  found: text('Found', 'Como se encontró'),
  opened: text('Opened', 'Abierto'),
  during: text('During', 'Durante'),
  repaired: text('Repaired', 'Reparado'),
  'before-cover': text('Before cover', 'Antes de cubrir'),
};

/** A share below it is written 0%. */
export const ROUNDS_TO_NONE = 0.005;

/** What a screening may count of a need, for an owner: a screening is no measurement of the house, and says so. */
export const sayCounted = (share: number, of: Text): Text =>
  share < ROUNDS_TO_NONE
    ? text(
        `By this check we can count none of ${of.en}. An engineer may find more.`,
        `Según esta revisión no se puede contar con nada de ${of.es}. Un ingeniero puede encontrar más.`,
      )
    : text(
        `By this check we can count about ${percent(share, 0)} of ${of.en}. An engineer may find more.`,
        `Según esta revisión se puede contar con cerca del ${percent(share, 0)} de ${of.es}. Un ingeniero puede encontrar más.`,
      );
