import { useCallback, useState } from 'react';

/** What is typed into a form, by name. It stays through every failed attempt to send it. */
export function useDraft<T extends object>(initial: T | (() => T)) {
  const [draft, setDraft] = useState(initial);
  const set = useCallback(
    <K extends keyof T>(name: K) =>
      (value: T[K]) =>
        setDraft((before) => ({ ...before, [name]: value })),
    [],
  );
  return { draft, set, setDraft };
}
