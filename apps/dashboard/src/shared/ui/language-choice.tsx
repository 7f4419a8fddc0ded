import type { Locale } from '@underlath/rules/kernel';
import { useLocale, useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import './ui.css';

/** Both languages always in sight; the one in use is underlined. */
export function LanguageChoice() {
  const { locale, setLocale } = useLocale();
  const t = useT(commonWords);
  const names: Record<Locale, string> = { en: t('english'), es: t('spanish') };
  return (
    <fieldset className="languages">
      <legend className="hidden-text">{t('language')}</legend>
      {(['en', 'es'] as const).map((each) => (
        <button key={each} type="button" lang={each} aria-pressed={locale === each} onClick={() => setLocale(each)}>
          {names[each]}
        </button>
      ))}
    </fieldset>
  );
}
