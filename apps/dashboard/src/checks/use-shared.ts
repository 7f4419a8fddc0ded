import { useNavigate, useSearch } from '@tanstack/react-router';
import type { Check } from '@underlath/rules';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { useLocale } from '../shared/i18n/locale.tsx';
import { fromSearch, type Shared, toSearch } from '../shared/measure/share-link.ts';

/** Browsers slow down an address that changes with every key. */
const pauseMs = 250;

/** The measurements on a sheet. They come from the address and go back into it, so that it can be shared and reloaded. */
export function useShared(check: Check) {
  const search = useSearch({ from: '/checks/$checkId' });
  const { locale } = useLocale();
  const navigate = useNavigate();
  const opened = useRef(search);
  const [shared, setShared] = useState<Shared>(() => fromSearch(check, opened.current, locale).shared);
  const troubles = useMemo(() => fromSearch(check, opened.current, locale).troubles, [check, locale]);
  const touched = useRef(false);
  const change = useCallback((next: Shared) => {
    touched.current = true;
    setShared(next);
  }, []);
  const words = useMemo(() => toSearch(check, shared), [check, shared]);
  useEffect(() => {
    if (!touched.current) return;
    const timer = setTimeout(
      () =>
        void navigate({
          to: '/checks/$checkId',
          params: { checkId: check.id },
          search: words,
          replace: true,
          resetScroll: false,
        }),
      pauseMs,
    );
    return () => clearTimeout(timer);
  }, [check, words, navigate]);
  return { shared, change, troubles, link: linkTo(check, words) };
}

/** The whole address of a sheet with these measurements. */
function linkTo(check: Check, words: Record<string, string>): string {
  const query = new URLSearchParams(words).toString();
  return `${location.origin}/checks/${check.id}${query ? `?${query}` : ''}`;
}
