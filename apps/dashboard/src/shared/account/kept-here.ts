import { forgetMe } from '../api/kept-me.ts';

/** Drafts of the desk. What the crew measured and did not send is not among them: it stays unless the person says so. */
const draftKeys = /^underlath\.(change-order|cost-book|estimate)\./;
const unsentKeys = /^underlath\.measure\./;

const keysLike = (pattern: RegExp): string[] => {
  try {
    return Object.keys(localStorage).filter((key) => pattern.test(key));
  } catch {
    return []; // Storage that is shut off keeps nothing.
  }
};

export const countDrafts = (): number => keysLike(draftKeys).length;
/** Measurements that were typed on this device and not saved. */
export const countKeptMeasures = (): number => keysLike(unsentKeys).length;

/** Removes what this browser kept of a person who signed out. Pictures in its cache go by the server's word. */
export async function forgetPerson(memberId: string, unsentToo: boolean): Promise<void> {
  forgetMe();
  for (const key of [...keysLike(draftKeys), ...(unsentToo ? keysLike(unsentKeys) : [])]) localStorage.removeItem(key);
  if (unsentToo) await deleteOutbox(memberId);
}

/** The outbox of this person; a page that still holds it open lets go when it is left. */
const deleteOutbox = (memberId: string): Promise<void> =>
  new Promise((done, fail) => {
    const request = indexedDB.deleteDatabase(`underlath-crew-${memberId}`);
    request.onsuccess = () => done();
    request.onblocked = () => done();
    request.onerror = () => fail(request.error ?? new Error('the outbox could not be deleted'));
  });
