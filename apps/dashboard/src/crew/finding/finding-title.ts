import { findEntry } from '@underlath/rules';
import { type Locale, say } from '@underlath/rules/kernel';

/** A finding nobody named carries its check's English name; it is shown in the reader's language. */
export function findingTitle(finding: { title: string; checkId: string }, locale: Locale): string {
  const check = findEntry(finding.checkId);
  return check && finding.title === check.title.en ? say(check.title, locale) : finding.title;
}
