import { Link, useParams } from '@tanstack/react-router';
import { type Estimate, type Finding, type PriceLine, routes } from '@underlath/contract';
import { useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { SeverityMark } from '../../shared/ui/severity.tsx';
import { useStatus } from '../../shared/ui/status.tsx';
import { draftOf, type EstimateDraft, withQuantity, withRepair } from '../parts/estimate-draft.ts';
import { findingReads } from '../parts/finding-moves.tsx';
import { FormFail } from '../parts/form-fail.tsx';
import { ManualLines } from '../parts/manual-lines.tsx';
import { Page, Part } from '../parts/page.tsx';
import { PriceRange } from '../parts/price-range.tsx';
import { PlaceholderNote, PriceTable } from '../parts/price-table.tsx';
import { useOverview, useProjectId } from '../parts/project-frame.tsx';
import { QuantityDialog } from '../parts/quantity-dialog.tsx';
import { Reading } from '../parts/reading.tsx';
import { operationWords } from '../parts/words.ts';
import '../price.css';

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
  const say = useStatus();
  const [draft, setDraft] = useState<EstimateDraft>(() => draftOf(estimate));
  const [changing, setChanging] = useState<PriceLine | null>(null);
  const save = useChange(routes.saveEstimate, {
    invalidates: findingReads,
    onDone: (saved) => {
      setDraft(draftOf(saved));
      say('Saved. The finding is priced.');
    },
  });
  const range = useRoute(routes.getEstimateRange, { params: { findingId: estimate.findingId } });
  const problem = save.error ? problemOf(save.error) : null;
  const changed = JSON.stringify(draft) !== JSON.stringify(draftOf(estimate));
  const send = () =>
    save.mutate({
      params: { findingId: estimate.findingId },
      body: draft,
      ifMatch: estimate.findingVersion,
    });
  const { scope } = estimate;
  return (
    <>
      {scope.placeholder && <PlaceholderNote version={scope.costBookVersion} />}
      <Part title="Repair" lead="What the check proposes comes first. Shared work is counted once in a change order.">
        {estimate.options.length === 0 && (
          <p>
            No repair is known for this finding: the engineer decides what is done. Enter what it costs as lines of your
            own below.
          </p>
        )}
        <div className="repair-options">
          {estimate.options.map((option) => (
            <Checkbox
              key={option.repairId}
              label={option.title.en}
              detail={option.fromCheck ? 'proposed by the check' : undefined}
              checked={draft.choices.some((choice) => choice.repairId === option.repairId)}
              onChange={(checked) => setDraft(withRepair(draft, option.repairId, checked))}
            />
          ))}
        </div>
      </Part>
      <Part
        title="Price"
        lead={
          <>
            Cost book version {scope.costBookVersion}. Open a line to see how it came about; press a quantity to replace
            it.
          </>
        }
      >
        {changed && (
          <p className="notice">
            The lines below are of what was saved last. Save, and they are worked out again with your changes.
          </p>
        )}
        <PriceTable scope={scope} caption="Price of this finding alone" onQuantity={setChanging} />
        <Replaced
          draft={draft}
          onDrop={(repairId, operation) => setDraft(withQuantity(draft, repairId, operation, null))}
        />
      </Part>
      <PriceRange query={range} />
      <ManualLines lines={draft.manualLines} onChange={(manualLines) => setDraft({ ...draft, manualLines })} />
      <FormFail problem={problem} doing="Saving the price" />
      <div className="row form-foot">
        <Button look="go" busy={save.isPending} onClick={send}>
          {estimate.saved ? 'Save the price' : 'Price it so'}
        </Button>
        {estimate.saved && !changed && (
          <Link to="/projects/$projectId/change-orders/new" params={{ projectId }} className={buttonClass('plain')}>
            Put into a change order
          </Link>
        )}
      </div>
      {changing && (
        <QuantityDialog
          line={changing}
          draft={draft}
          onClose={() => setChanging(null)}
          onReplace={(repairId, replacement) => {
            setDraft(withQuantity(draft, repairId, changing.operation, replacement));
            setChanging(null);
          }}
        />
      )}
    </>
  );
}

type ReplacedProps = { draft: EstimateDraft; onDrop: (repairId: string, operation: string) => void };

/** Quantities the estimator set instead of the measured ones, with the reason that is kept. */
function Replaced({ draft, onDrop }: ReplacedProps) {
  const rows = draft.choices.flatMap((choice) =>
    Object.entries(choice.quantities).map(([operation, quantity]) => ({
      repairId: choice.repairId,
      operation,
      ...quantity,
    })),
  );
  if (rows.length === 0) return null;
  return (
    <ul className="replaced">
      {rows.map((row) => (
        <li key={row.repairId + row.operation}>
          <span>
            <b>{operationWords(row.operation)}</b> replaced by {row.value}: {row.why}
          </span>
          <Button look="quiet" onClick={() => onDrop(row.repairId, row.operation)}>
            Back to the measured quantity
          </Button>
        </li>
      ))}
    </ul>
  );
}
