import { defineMessages } from '../define.ts';

/** The letter to the owner of the house. Short sentences; each trade word explained once. */
export const client = defineMessages({ yourChoice: 'Your choice' }, { yourChoice: 'Su decisión' });
