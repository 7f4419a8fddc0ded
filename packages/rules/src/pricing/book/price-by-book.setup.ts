import { text } from '../../kernel/index.ts';
import type { WorkLine } from '../../repairs/drawn.ts';
import { evaluateEstimate } from '../estimate/estimate.ts';
import type { EstimateLine } from '../estimate/estimate-input.ts';
import { type PriceGap, rateWork } from '../estimate/rate-work.ts';
import type { CostBook } from './cost-book.ts';

/** A line of work that somebody counted, for tests of what it costs. */
export const workLine = (more: Pick<WorkLine, 'operation' | 'quantity' | 'unit'> & Partial<WorkLine>): WorkLine => ({
  title: text(more.operation, more.operation),
  phase: 'replace',
  how: text('Counted.', 'Contado.'),
  assumed: false,
  holdPoint: false,
  for: ['finding'],
  ...more,
});

/** What work comes to by a book, and what the book lacks for it; no price while it lacks anything. */
export function priceByBook(work: readonly WorkLine[], book: CostBook) {
  const lines: EstimateLine[] = [];
  const gaps: PriceGap[] = [];
  for (const one of work) {
    const rated = rateWork(one, book);
    if (Array.isArray(rated)) gaps.push(...rated);
    else lines.push(rated);
  }
  const { overheadPct, profitPct, stacking } = book;
  const estimate = gaps.length > 0 ? null : evaluateEstimate({ lines, overheadPct, profitPct, stacking });
  return { lines: estimate?.lines ?? [], estimate, gaps };
}
