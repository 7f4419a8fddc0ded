/** Work the base contract does already at this place, and the operation it takes off this scope. */
export const EXISTING = {
  protected: 'protect-place',
  stripped: 'open-finish',
  shored: 'shore-load',
  closed: 'close-finish',
  hauled: 'haul-debris',
  inspected: 'inspection-hold',
} as const;
export type Existing = keyof typeof EXISTING;
export const EXISTING_WORK = Object.keys(EXISTING) as [Existing, ...Existing[]];
