import type { ReactNode } from 'react';
import { formatMoney } from '../i18n/format.ts';
import { useLocale, useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import './ui.css';

type MoneyProps = { cents: number; trim?: boolean; sign?: boolean };

/** Integer cents, tabular figures, never broken over a line. */
export function Money({ cents, trim, sign }: MoneyProps) {
  const { tag } = useLocale();
  return <span className="money">{formatMoney(cents, tag, { trim, sign })}</span>;
}

/** A change: what it was, an arrow, what it is now. Read aloud as "was … is now …". */
export function WasIs({ was, is }: { was: ReactNode; is: ReactNode }) {
  const t = useT(commonWords);
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
