import type { ReactNode } from 'react';
import './ui.css';

/** `lang` where the name is in another language than the page. */
export type Fact = { name: string; lang?: string; value: ReactNode; note?: ReactNode };

/** Ruled lines of name and value, the value to the right. */
export function Facts({ facts }: { facts: readonly Fact[] }) {
  return (
    <dl className="facts">
      {facts.map((fact) => (
        <div key={fact.name}>
          <dt lang={fact.lang}>{fact.name}</dt>
          <dd>
            {fact.value}
            {fact.note && <div className="soft small">{fact.note}</div>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
