import type { Locale } from '@underlath/rules/kernel';
import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import { fillMessage, type MessageParams, type MessageSection } from './define.ts';

/** The tags given to Intl. Both are of the United States: its dates, its dollars, its digits. */
export const localeTags: Record<Locale, string> = { en: 'en-US', es: 'es-US' };

type LocaleState = { locale: Locale; tag: string; setLocale: (locale: Locale) => void };

const LocaleContext = createContext<LocaleState>({ locale: 'en', tag: 'en-US', setLocale: () => {} });

const storageKey = 'underlath.locale';

/** What this person chose before, else what their device speaks, else English. */
export function startingLocale(stored: string | null, device: readonly string[]): Locale {
  if (stored === 'en' || stored === 'es') return stored;
  return device[0]?.toLowerCase().startsWith('es') ? 'es' : 'en';
}

/** What this person chose on this device before, or null. */
export function readStoredLocale(): string | null {
  try {
    return localStorage.getItem(storageKey);
  } catch {
    return null; // Storage can be shut off by the browser; the device's language is then the answer each time.
  }
}

/** Gives every screen below it its language, and remembers a change on this device. */
export function LocaleProvider({ children, initial }: { children: ReactNode; initial?: Locale }) {
  const [locale, setState] = useState<Locale>(() => initial ?? startingLocale(readStoredLocale(), navigator.languages));
  const setLocale = useCallback((next: Locale) => {
    setState(next);
    try {
      localStorage.setItem(storageKey, next);
    } catch {
      // Not kept for the next visit when storage is shut off; this visit has it.
    }
  }, []);
  useEffect(() => {
    document.documentElement.lang = locale;
  }, [locale]);
  const state = useMemo(() => ({ locale, tag: localeTags[locale], setLocale }), [locale, setLocale]);
  return <LocaleContext value={state}>{children}</LocaleContext>;
}

/** A language for what is below it alone: nothing is remembered, and the page around it keeps its own. */
export function LocaleScope({ children, initial }: { children: ReactNode; initial: Locale }) {
  const [locale, setLocale] = useState(initial);
  const state = useMemo(() => ({ locale, tag: localeTags[locale], setLocale }), [locale]);
  return (
    <LocaleContext value={state}>
      <div lang={locale}>{children}</div>
    </LocaleContext>
  );
}

export function useLocale(): LocaleState {
  return useContext(LocaleContext);
}

/** `const t = useT(crew); t('takePhoto')`. Only the sections a page uses are in its bundle. */
export function useT<K extends string>(section: MessageSection<K>): (key: K, params?: MessageParams) => string {
  const { locale, tag } = useLocale();
  return useCallback((key, params) => fillMessage(section[locale][key], tag, params), [section, locale, tag]);
}
