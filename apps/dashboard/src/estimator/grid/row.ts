import * as z from 'zod';

/** A row of a grid: every cell a text, as it was typed, and a key that stays with the row. */
export type Row = { readonly key: string } & Readonly<Record<string, string>>;

/** Reads a row back from where a browser kept it. */
export const rowSchema = z.record(z.string(), z.string()).and(z.object({ key: z.string() }));
