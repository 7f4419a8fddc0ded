import { useEffect, useRef, useState } from 'react';

const pauseMs = 300;

/** What is typed into a search, handed on when the typing pauses. */
export function useTypedSearch(known: string, onPause: (typed: string) => void): [string, (typed: string) => void] {
  const [typed, setTyped] = useState(known);
  const handOn = useRef(onPause);
  handOn.current = onPause;
  useEffect(() => {
    if (typed.trim() === known) return;
    const timer = setTimeout(() => handOn.current(typed.trim()), pauseMs);
    return () => clearTimeout(timer);
  }, [typed, known]);
  return [typed, setTyped];
}
