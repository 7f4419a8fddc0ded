import { useCallback, useEffect, useState } from 'react';

/** A pause this long ends a number: 1 on the way to 11 is not refused, what stays is. Common practice, no source. */
const REST_MS = 700;

/** The value once it has stood still, and a way to take it as it stands, for when the hand leaves the box. */
export function useRested<T>(value: T): [rested: T, settle: () => void] {
  const [rested, setRested] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setRested(value), REST_MS);
    return () => clearTimeout(timer);
  }, [value]);
  return [rested, useCallback(() => setRested(value), [value])];
}

type Errors = Readonly<Record<string, string>>;

/** What is refused and stood still; what was mended is gone at once. */
export function useRestedErrors(errors: Errors): [shown: Errors, settle: () => void] {
  const [rested, settle] = useRested(errors);
  const shown = Object.fromEntries(Object.entries(errors).filter(([path, words]) => rested[path] === words));
  return [shown, settle];
}
