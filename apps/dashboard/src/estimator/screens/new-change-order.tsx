import { Link, useNavigate } from '@tanstack/react-router';
import { type FindingRow, routes } from '@underlath/contract';
import { useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, usePages } from '../../shared/api/hooks.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { FindingChooser } from '../parts/finding-chooser.tsx';
import { findingReads } from '../parts/finding-moves.tsx';
import { FormFail } from '../parts/form-fail.tsx';
import { MoreRows } from '../parts/more-rows.tsx';
import { Page } from '../parts/page.tsx';
import { useOverview, useProjectId } from '../parts/project-frame.tsx';
import { Reading } from '../parts/reading.tsx';

/** Which priced findings the client decides on together. */
export function NewChangeOrderScreen() {
  const projectId = useProjectId();
  const overview = useOverview();
  const priced = usePages(routes.listFindings, { params: { projectId }, query: { state: 'priced', limit: 200 } });
  const rows = priced.items as FindingRow[];
  const navigate = useNavigate();
  const [unticked, setUnticked] = useState<ReadonlySet<string>>(new Set());
  const chosen = rows.filter((row) => !unticked.has(row.id)).map((row) => row.id);
  const create = useChange(routes.createChangeOrder, {
    invalidates: [...findingReads, routes.listChangeOrders],
    onDone: (order) =>
      navigate({
        to: '/projects/$projectId/change-orders/$changeOrderId',
        params: { projectId, changeOrderId: order.id },
      }),
  });
  return (
    <Page
      title="New change order"
      of={overview.data?.project.name}
      lead="The client decides on all of it at once. Work that findings share is counted once."
    >
      <Reading query={priced} doing="Reading the priced findings">
        {() =>
          rows.length === 0 ? (
            <EmptyState
              title="No finding is priced"
              action={
                <Link
                  to="/projects/$projectId/findings"
                  params={{ projectId }}
                  search={{ state: 'judged' }}
                  className={buttonClass('go')}
                >
                  Findings to price
                </Link>
              }
            >
              <p>A change order is made of findings with a saved price. Price one first.</p>
            </EmptyState>
          ) : (
            <>
              <FindingChooser
                rows={rows}
                chosen={chosen}
                onToggle={(id, on) =>
                  setUnticked((before) => {
                    const next = new Set(before);
                    if (on) next.delete(id);
                    else next.add(id);
                    return next;
                  })
                }
              />
              <MoreRows pages={priced} what="findings" />
              <FormFail problem={create.error ? problemOf(create.error) : null} doing="Making the change order" />
              <div className="row form-foot">
                <Button
                  look="go"
                  busy={create.isPending}
                  disabled={chosen.length === 0}
                  onClick={() => create.mutate({ params: { projectId }, body: { findingIds: chosen } })}
                >
                  Make the change order
                </Button>
                {chosen.length === 0 && <span className="soft">Choose at least one finding.</span>}
              </div>
            </>
          )
        }
      </Reading>
    </Page>
  );
}
