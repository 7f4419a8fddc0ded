import { useMemo } from 'react';
import * as z from 'zod';
import { useKeptDraft } from '../desk/use-kept-draft.ts';
import { rowSchema } from '../grid/row.ts';
import type { BookDraft } from './draft.ts';

const schema: z.ZodType<BookDraft> = z.object({
  own: z.boolean(),
  notice: z.object({ en: z.string(), es: z.string() }),
  trades: z.array(rowSchema),
  parts: z.array(rowSchema),
  items: z.array(rowSchema),
  fees: z.array(rowSchema),
  overhead: z.string(),
  profit: z.string(),
  stacking: z.enum(['stacked', 'added']),
  crew: z.string(),
  hoursPerDay: z.string(),
});

/** The draft of a company's cost book, kept in this browser until it is saved. */
export function useBookDraft(companyId: string, version: number, saved: () => BookDraft) {
  const keeping = useMemo(() => ({ key: `underlath.cost-book.${companyId}`, schema }), [companyId]);
  return useKeptDraft(keeping, version, saved);
}
