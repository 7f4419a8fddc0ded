import type { ReactNode } from 'react';
import './desk.css';
import './forms.css';

type PageProps = {
  title: string;
  /** In the window's title after the screen's own: the project's name. */
  of?: string | undefined;
  lead?: ReactNode;
  /** At most one primary action. */
  actions?: ReactNode;
  wide?: boolean;
  children: ReactNode;
};

/** A desk screen: heading, one line that says what it is for, its action at the right, then the work. */
export function Page({ title, of, lead, actions, wide, children }: PageProps) {
  return (
    <main id="main" className={wide ? 'page page-wide' : 'page'}>
      <WindowTitle title={title} of={of} />
      <div className="page-head">
        <div>
          <h1 tabIndex={-1}>{title}</h1>
          {lead && <div className="page-lead soft">{lead}</div>}
        </div>
        {actions && <div className="row page-actions">{actions}</div>}
      </div>
      {children}
    </main>
  );
}

export function WindowTitle({ title, of }: { title: string; of?: string | undefined }) {
  return <title>{[title, of, 'Underlath'].filter(Boolean).join(' · ')}</title>;
}

/** A part of a page under its own heading, set off by a rule. */
export function Part({
  title,
  lead,
  actions,
  children,
}: {
  title: string;
  lead?: ReactNode;
  actions?: ReactNode;
  children: ReactNode;
}) {
  return (
    <section className="part">
      <div className="part-head">
        <h2>{title}</h2>
        {actions && <div className="row">{actions}</div>}
      </div>
      {lead && <p className="soft prose">{lead}</p>}
      {children}
    </section>
  );
}
