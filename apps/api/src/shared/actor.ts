import type { RecordEvent } from '@underlath/contract';

/** Who did it, as the record keeps it: the name is kept too, because people are renamed and removed. */
export type Actor = RecordEvent['actor'];

/** Work that no person asked for just then, such as making the smaller pictures. */
export const systemActor: Actor = { kind: 'system', id: 'system', name: 'Underlath' };
