import * as z from 'zod';

/** A row of a grid as a browser keeps it: every cell a text, with a key of its own. */
export const rowSchema = z.record(z.string(), z.string()).and(z.object({ key: z.string() }));
