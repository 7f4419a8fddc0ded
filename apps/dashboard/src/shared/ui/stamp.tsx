import { type DateStyle, formatDate } from '../i18n/format.ts';
import { useLocale } from '../i18n/locale.tsx';

/** A date in the reader's words, with the exact instant in the markup. `zone` when it must read as on the site. */
export function Stamp({ at, look = 'day', zone }: { at: string; look?: DateStyle; zone?: string }) {
  const { tag } = useLocale();
  return (
    <time dateTime={at} title={at}>
      {formatDate(at, tag, look, zone)}
    </time>
  );
}
