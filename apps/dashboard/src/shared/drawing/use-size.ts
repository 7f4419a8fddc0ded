import { type RefObject, useLayoutEffect, useState } from 'react';

export type Size = { widthPx: number; textPx: number };

/**
 * The width a drawing really has and the size of the text around it. Drawings are laid out in real pixels rather than
 * scaled, so that their words keep the size of the other words on the screen.
 */
export function useSize(ref: RefObject<Element | null>, fallback: Size): Size {
  const [size, setSize] = useState(fallback);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = () => {
      const widthPx = Math.round(element.getBoundingClientRect().width);
      const textPx = Number.parseFloat(getComputedStyle(element).fontSize);
      if (widthPx > 0) setSize((old) => (old.widthPx === widthPx && old.textPx === textPx ? old : { widthPx, textPx }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return size;
}
