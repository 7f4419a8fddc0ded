import type { DateStyle } from '../i18n/format.ts';
import { useDate } from '../i18n/site-zone.tsx';

/** A date in the reader's words, by the clock of the site it is about, with the exact instant in the markup. */
export function Stamp({ at, look = 'day' }: { at: string; look?: DateStyle }) {
  const formatDate = useDate();
  return (
    <time dateTime={at} title={at}>
      {formatDate(at, look)}
    </time>
  );
}
