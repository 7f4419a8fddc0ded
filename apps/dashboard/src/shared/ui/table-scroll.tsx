import type { ReactNode } from 'react';

/** A table wider than a phone scrolls sideways in here; it takes the focus, so that the keyboard can scroll it too (WCAG 2.1.1). */
export function TableScroll({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section className="table-scroll" aria-label={`${label}, scrolls sideways`} tabIndex={0}>
      {children}
    </section>
  );
}
