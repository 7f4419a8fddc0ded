import type { ReactNode } from 'react';
import { formatCents } from '../i18n/format.ts';
import { useLocale, useT } from '../i18n/locale.tsx';
import { common } from '../i18n/messages/common.ts';
import './ui.css';

type MoneyProps = { cents: number; trim?: boolean; sign?: boolean };

/** Integer cents, tabular figures, never broken over a line. */
export function Money({ cents, trim, sign }: MoneyProps) {
  const { tag } = useLocale();
  return <span className="money">{formatCents(cents, tag, { trim, sign })}</span>;
}

/** A change: what it was, an arrow, what it is now. Read aloud as "was … is now …". */
export function WasIs({ was, is }: { was: ReactNode; is: ReactNode }) {
  const t = useT(common);
  return (
    <span className="was-is">
      <span className="hidden-text">{t('was')} </span>
      <span className="soft">{was}</span>
      <span aria-hidden="true"> → </span>
      <span className="hidden-text"> {t('is')} </span>
      <b>{is}</b>
    </span>
  );
}
