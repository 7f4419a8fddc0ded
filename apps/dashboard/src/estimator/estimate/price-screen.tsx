import { Link, useParams } from '@tanstack/react-router';
import { type Estimate, type Finding, type Problem, type RangeShape, routes } from '@underlath/contract';
import { useEffect, useMemo, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { SeverityMark } from '../../shared/ui/severity.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { Page, Part } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { undoKey } from '../desk/undo-key.ts';
import { UndoTools } from '../desk/undo-tools.tsx';
import { useKeptDraft } from '../desk/use-kept-draft.ts';
import { findingReads } from '../finding/moves.tsx';
import { useOverview, useProjectId } from '../project/project-frame.tsx';
import { AlternatesEditor } from './alternates-editor.tsx';
import { EstimateBar } from './bar.tsx';
import { draftOf, estimateDraftSchema, withRepair } from './draft.ts';
import { ExclusionsEditor } from './exclusions-editor.tsx';
import { LikelyPrice } from './likely-price.tsx';
import { LineEditor } from './line-editor.tsx';
import { PriceSums } from './price-sums.tsx';
import { PlaceholderNote } from './price-table.tsx';
import { previewBody, readEstimate } from './read-draft.ts';
import { useEstimatePreview } from './use-estimate-preview.ts';
import './estimate.css';

/** Scope and price of one finding: the repairs, their quantities, the lines, the total. */
export function PriceScreen() {
  const projectId = useProjectId();
  const overview = useOverview();
  const { findingId } = useParams({ from: '/in/desk/projects/$projectId/findings/$findingId/price' });
  const finding = useRoute(routes.getFinding, { params: { findingId } });
  const estimate = useRoute(routes.getEstimate, { params: { findingId } });
  return (
    <Page
      title="Scope and price"
      wide
      of={overview.data?.project.name}
      lead={finding.data && <About finding={finding.data} projectId={projectId} />}
    >
      <Reading query={estimate} doing="Reading the estimate" rows={8}>
        {(data) => <EstimateForm key={findingId} estimate={data} projectId={projectId} />}
      </Reading>
    </Page>
  );
}

function About({ finding, projectId }: { finding: Finding; projectId: string }) {
  const judgment = finding.judgments.toSorted((a, b) => b.seq - a.seq)[0];
  return (
    <p className="about">
      {judgment && <SeverityMark severity={judgment.answer.severity} />}
      <Link
        to="/projects/$projectId/house"
        params={{ projectId }}
        search={{ place: finding.locationId, finding: finding.id }}
      >
        {finding.title}
      </Link>
      <span>{finding.locationName}</span>
    </p>
  );
}

function EstimateForm({ estimate, projectId }: { estimate: Estimate; projectId: string }) {
  const announce = useAnnounce();
  const { findingId, findingVersion } = estimate;
  const keeping = useMemo(() => ({ key: `underlath.estimate.${findingId}`, schema: estimateDraftSchema }), [findingId]);
  const state = useKeptDraft(keeping, findingVersion, () => draftOf(estimate));
  const { draft, change, touched } = state;
  const read = useMemo(() => readEstimate(draft), [draft]);
  // As it was when Save was pressed: what is mended since is no new alarm.
  const [told, setTold] = useState<Problem | null>(null);
  useEffect(() => {
    if (!read.problem) setTold(null);
  }, [read.problem]);
  const [shape, setShape] = useState<RangeShape>('pert-beta');
  const preview = useEstimatePreview(estimate, touched ? previewBody(read) : null, shape);
  const range = useRoute(routes.getEstimateRange, { params: { findingId }, query: { shape } });
  const save = useChange(routes.saveEstimate, {
    invalidates: findingReads,
    onDone: (saved) => {
      state.startFrom(draftOf(saved), saved.findingVersion);
      announce('Saved. The finding is priced.');
    },
  });
  const refused = save.error ? problemOf(save.error) : null;
  const problem = read.problem ?? refused;
  const live = touched ? preview.data : undefined;
  const shown = live?.estimate ?? estimate;
  function send() {
    setTold(read.problem);
    if (!read.problem) save.mutate({ params: { findingId }, body: read.body, ifMatch: findingVersion });
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only hears the undo keys of what is in it
    <div className="estimate-form" onKeyDown={(event) => undoKey(event, state)}>
      {shown.scope.placeholder && <PlaceholderNote version={shown.scope.costBookVersion} />}
      {touched && (
        <Unsaved
          state={state}
          newest={findingVersion}
          onDrop={() => state.startFrom(draftOf(estimate), findingVersion)}
        />
      )}
      <Part title="Repair" lead="What the check proposes comes first. Shared work is counted once in a change order.">
        {shown.options.length === 0 && (
          <p>
            No repair is known for this finding: the engineer decides what is done. Enter what it costs as lines of your
            own below.
          </p>
        )}
        <div className="repair-options">
          {shown.options.map((option) => (
            <Checkbox
              key={option.repairId}
              label={option.title.en}
              detail={option.fromCheck ? 'proposed by the check' : undefined}
              checked={draft.choices.some((choice) => choice.repairId === option.repairId)}
              onChange={(checked) => change((old) => withRepair(old, option.repairId, checked))}
            />
          ))}
        </div>
      </Part>
      <Part
        title="Lines"
        lead={
          <>
            Cost book version {shown.scope.costBookVersion}. Type over a quantity, the hours or a price to set it by
            hand; the reason is kept, and an emptied cell is the book’s again.
          </>
        }
      >
        <UndoTools state={state}>
          <p className="soft grid-keys wide-only">
            Arrows move, typing replaces, Enter or F2 edits, Tab goes on, Escape gives up, Ctrl+Z undoes. Rows copied
            from a spreadsheet can be pasted into lines of your own.
          </p>
        </UndoTools>
        <LineEditor draft={draft} change={change} scope={shown.scope} problem={problem} />
        <PriceSums scope={shown.scope} />
      </Part>
      <LikelyPrice
        shape={shape}
        onShape={setShape}
        query={
          live ? { data: live.range, error: null, isFetching: preview.isFetching, refetch: preview.refetch } : range
        }
      />
      <ExclusionsEditor draft={draft} change={change} problem={problem} />
      <AlternatesEditor draft={draft} change={change} problem={problem} estimate={shown} />
      <FormFail problem={read.problem ? told : refused} doing="Saving the price" />
      {estimate.saved && !touched && (
        <p>
          <Link to="/projects/$projectId/change-orders/new" params={{ projectId }} className={buttonClass('plain')}>
            Put into a change order
          </Link>
        </p>
      )}
      <EstimateBar
        estimate={shown}
        range={live?.range ?? range.data}
        preview={touched ? preview : null}
        wrong={read.problem?.errors?.length ?? 0}
      >
        <Button look="go" busy={save.isPending} onClick={send}>
          Save price
        </Button>
      </EstimateBar>
    </div>
  );
}

type UnsavedProps = { state: { base: number; isKept: boolean }; newest: number; onDrop: () => void };

/** What is typed and not saved, and where it is. */
function Unsaved({ state, newest, onDrop }: UnsavedProps) {
  return (
    <div className="notice book-unsaved">
      <p>
        <b>Not saved yet.</b>{' '}
        {state.isKept
          ? 'What you typed stays in this browser until you save or discard it.'
          : 'This browser keeps nothing: save before you leave the page.'}
        {state.base !== newest && ' The finding has changed since you began; saving puts your lines in place of its.'}
      </p>
      <Button look="quiet" onClick={onDrop}>
        Discard changes
      </Button>
    </div>
  );
}
