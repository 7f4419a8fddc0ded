import type { Locale } from '@underlath/rules/kernel';
import { useLocale, useT } from '../shared/i18n/locale.tsx';
import { commonWords } from '../shared/i18n/messages/common.ts';

const names: Record<Locale, 'english' | 'spanish'> = { en: 'english', es: 'spanish' };

/** Both languages by their own names, the one that is on underlined in ink. */
export function LanguageSwitch() {
  const { locale, setLocale } = useLocale();
  const t = useT(commonWords);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for questions; these are two buttons that belong together
    <div className="languages no-print" role="group" aria-label={t('language')}>
      {(Object.keys(names) as Locale[]).map((each) => (
        <button key={each} type="button" lang={each} aria-pressed={each === locale} onClick={() => setLocale(each)}>
          {t(names[each])}
        </button>
      ))}
    </div>
  );
}
