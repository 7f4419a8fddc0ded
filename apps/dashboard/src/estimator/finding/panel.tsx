import { type Finding, routes } from '@underlath/contract';
import { useEffect, useRef, useState } from 'react';
import { useRoute } from '../../shared/api/hooks.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { Button } from '../../shared/ui/button.tsx';
import { SeverityMark } from '../../shared/ui/severity.tsx';
import { SidePanel } from '../../shared/ui/side-panel.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { Reading } from '../desk/reading.tsx';
import { findingStateWord, isClosed } from '../desk/words.ts';
import { NoticePanel } from '../notice/panel.tsx';
import { PhotoAdder } from '../photos/adder.tsx';
import { PhotoStrip } from '../photos/strip.tsx';
import { EditFinding } from './edit-finding.tsx';
import { JudgmentGrounds, JudgmentHistory, JudgmentView } from './judgment-view.tsx';
import { MeasureAgain } from './measure-again.tsx';
import { FindingMoves } from './moves.tsx';
import { FindingPrice } from './price.tsx';
import { WhatItTook } from './what-it-took.tsx';
import './finding.css';

type FindingPanelProps = {
  findingId: string;
  /** The person opened it: the focus goes to its title, and back to where it was when it closes. */
  takeFocus?: boolean;
  onClose: () => void;
};

/** Everything about one finding, beside the drawing it belongs to. */
export function FindingPanel({ findingId, takeFocus = false, onClose }: FindingPanelProps) {
  useFocusInPanel(takeFocus);
  const waiting = (finding: Finding | undefined) =>
    finding?.photos.some((photo) => photo.derivative.state === 'waiting') ? 2000 : false;
  const first = useRoute(routes.getFinding, { params: { findingId } });
  // Asked again while a photo is still being made smaller, so that it appears by itself.
  const finding = useRoute(routes.getFinding, { params: { findingId } }, { everyMs: waiting(first.data) });
  const data = finding.data;
  return (
    <SidePanel
      title={data?.title ?? 'Finding'}
      above={data?.judgments.length ? <SeverityMark severity={newest(data)?.answer.severity ?? 'record'} /> : undefined}
      subject={findingId}
      onClose={onClose}
    >
      <Reading query={finding} doing="Reading the finding" rows={6}>
        {(found) => <FindingBody key={found.id} finding={found} />}
      </Reading>
    </SidePanel>
  );
}

function useFocusInPanel(takeFocus: boolean) {
  const wanted = useRef(takeFocus);
  const before = useRef<Element | null>(null);
  useEffect(() => {
    if (!wanted.current) return;
    const focused = document.activeElement;
    if (!focused?.closest('.side-panel')) before.current = focused;
    document.querySelector<HTMLElement>('.side-panel h2')?.focus();
    return () => {
      if (before.current instanceof HTMLElement || before.current instanceof SVGElement) before.current.focus();
    };
  }, []);
}

const newest = (finding: Finding) => finding.judgments.toSorted((a, b) => b.seq - a.seq)[0];

function FindingBody({ finding }: { finding: Finding }) {
  const t = useT(commonWords);
  const [measuring, setMeasuring] = useState(false);
  const [editing, setEditing] = useState(false);
  const judgment = newest(finding);
  const open = !isClosed(finding.state);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it takes no key of its own, it keeps a dialog's Escape from closing the panel too
    <div
      className="finding-body"
      onKeyDown={(event) => {
        if (event.target instanceof Element && event.target.closest('dialog')) event.stopPropagation();
      }}
    >
      <p className="soft">
        No. {finding.number} · {findingStateWord(finding.state)} · found <Stamp at={finding.seenAt} look="day-time" />{' '}
        by {finding.createdBy.name}
      </p>
      {finding.stateReason && (
        <p>
          <b>{findingStateWord(finding.state)}:</b> {finding.stateReason}
        </p>
      )}
      {finding.note && <p className="finding-note">{finding.note}</p>}
      <PhotoStrip photos={finding.photos} />
      {open && (
        <PhotoAdder
          projectId={finding.projectId}
          findingId={finding.id}
          locationId={finding.locationId}
          compact
          onDone={() => {}}
        />
      )}
      {judgment ? (
        <JudgmentView judgment={judgment} />
      ) : (
        <p>
          <b>Not measured yet.</b> Measure it to learn what it is worth.
        </p>
      )}
      {open && (
        <p className="row">
          <Button onClick={() => setMeasuring(true)}>{judgment ? 'Measure again' : 'Measure'}</Button>
          <Button look="quiet" onClick={() => setEditing(true)}>
            Edit title, note, place
          </Button>
        </p>
      )}
      <NoticePanel finding={finding} />
      <FindingPrice finding={finding} />
      <WhatItTook finding={finding} />
      {judgment && <JudgmentGrounds judgment={judgment} />}
      <FindingMoves finding={finding} />
      <JudgmentHistory judgments={finding.judgments} />
      <p className="soft small">{t('screeningOnly')}</p>
      {measuring && <MeasureAgain finding={finding} onClose={() => setMeasuring(false)} />}
      {editing && <EditFinding finding={finding} onClose={() => setEditing(false)} />}
    </div>
  );
}
