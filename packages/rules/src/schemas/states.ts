/** A finding, from its first note to the proof that stays. */
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

/** When in the work a photo was taken. */
export const PHOTO_STAGES = ['found', 'opened', 'during', 'repaired', 'before-cover'] as const;
export type PhotoStage = (typeof PHOTO_STAGES)[number];

/** Photos of these stages are of work that has begun. */
export const WORK_STAGES: readonly PhotoStage[] = ['during', 'repaired', 'before-cover'];
