import type { ChangeOrderDocument } from '@underlath/contract';
import { expect, test } from 'vitest';
import { dayWords } from './day-words.ts';

test('days are told as the contract counts them; what was sent before that was kept had working days', () => {
  const of = (dayKind?: 'working' | 'calendar') =>
    dayWords({ contract: { ...(dayKind && { dayKind }) } as ChangeOrderDocument['contract'] }).en;
  expect([of(), of('working'), of('calendar')]).toEqual(['Working days', 'Working days', 'Calendar days']);
});
