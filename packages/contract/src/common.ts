import { EXISTING_WORK, NOTICE_METHODS } from '@underlath/rules';
import * as z from 'zod';

export type { Locale, Severity, Text, Verdict } from '@underlath/rules/kernel';
export type { ChangeOrderState, FindingState, PhotoStage } from '@underlath/rules/schemas';
export {
  basis,
  cents,
  changeOrderState,
  currency,
  day,
  findingState,
  givenDay,
  givenInstant,
  id,
  instant,
  line,
  lines,
  locale,
  manyWords,
  personName,
  photoStage,
  positiveCents,
  severity,
  sha256,
  text,
  verdict,
  words,
} from '@underlath/rules/schemas';

export const role = z.enum(['owner', 'estimator', 'crew']);
/** What the base contract does at a place already. */
export const existingWork = z.enum(EXISTING_WORK);
/** How a contract wants to be told, in the order the rules list them. */
export const noticeMethod = z.enum(NOTICE_METHODS);
/** In the address of a client's letter: ten of Crockford's 32 signs. It names the letter and opens nothing. */
export const letterId = z.string().regex(/^[0-9A-HJKMNP-TV-Z]{10}$/, { error: 'must be the id of a letter' });

/** A page of a list: `next` is an opaque cursor, null on the last page. */
export const page = <T extends z.ZodType>(item: T) => z.object({ items: z.array(item), next: z.string().nullable() });
export const pageQuery = z.object({
  cursor: z.string().max(300).optional(),
  limit: z.coerce.number().int().min(1).max(200).default(50),
});

export type Role = z.infer<typeof role>;
