import {
  RESTS_ON_WORDS,
  SEVERITY_WORDS,
  type Severity,
  say,
  type UnreadBasis,
  VERDICT_WORDS,
  type Verdict,
} from '@underlath/rules/kernel';
import type { ReactNode } from 'react';
import { useLocale } from '../i18n/locale.tsx';
import './ui.css';

const shapes: Record<Severity, ReactNode> = {
  'make-safe': (
    <>
      <rect x="1" y="1" width="18" height="18" fill="var(--red)" />
      <path d="M10 4.2v7.4M10 13.6v2.6" stroke="var(--on-red)" strokeWidth="2.6" />
    </>
  ),
  engineer: (
    <>
      <path d="M10 1.2 19 18.4H1Z" fill="var(--orange)" stroke="#1a1c1e" strokeWidth="1" />
      <path d="M10 7v5.4M10 14v2.4" stroke="#1a1c1e" strokeWidth="2.2" />
    </>
  ),
  repair: (
    <>
      <rect x="2.2" y="2.2" width="15.6" height="15.6" fill="none" stroke="#1a1c1e" strokeWidth="4.4" />
      <rect x="2.2" y="2.2" width="15.6" height="15.6" fill="none" stroke="var(--yellow)" strokeWidth="2.8" />
    </>
  ),
  record: <circle cx="10" cy="10" r="5.5" fill="var(--blue)" stroke="#ffffff" strokeWidth="1" />,
};

/** The mark alone: filled square make safe, triangle engineer, open square repair, dot note. Say the word beside it. */
export function SeverityShape({ severity, size = 20 }: { severity: Severity; size?: number }) {
  return (
    <svg className="severity-shape keeps-colour" viewBox="0 0 20 20" width={size} height={size} aria-hidden="true">
      {shapes[severity]}
    </svg>
  );
}

/** Mark and word. `compact` keeps the word for screen readers where a row has no room and the legend is on screen. */
export function SeverityMark({ severity, compact }: { severity: Severity; compact?: boolean }) {
  const { locale } = useLocale();
  return (
    <span className="severity">
      <SeverityShape severity={severity} />
      <span className={compact ? 'hidden-text' : undefined}>{say(SEVERITY_WORDS[severity], locale)}</span>
    </span>
  );
}

/** The verdict in words, heavy when it does not meet; beside it what it rests on, when that was not read in print. */
export function VerdictWord({ verdict, restsOn = [] }: { verdict: Verdict; restsOn?: readonly UnreadBasis[] }) {
  const { locale, tag } = useLocale();
  const word = <span className={`verdict verdict-${verdict}`}>{say(VERDICT_WORDS[verdict], locale)}</span>;
  if (restsOn.length === 0) return word;
  const bases = restsOn.map((basis) => say(RESTS_ON_WORDS[basis], locale));
  return (
    <>
      {word} {new Intl.ListFormat(tag, { type: 'conjunction' }).format(bases)}
    </>
  );
}

/** A finding's severity with its reason in words, edged in the severity's colour. Make-safe fills the whole strip. */
export function SeverityNote({ severity, children }: { severity: Severity; children: ReactNode }) {
  return (
    <div className={`severity-note severity-note-${severity} keeps-colour`}>
      <SeverityMark severity={severity} />
      <div>{children}</div>
    </div>
  );
}
