import { Link, useNavigate } from '@tanstack/react-router';
import { routes } from '@underlath/contract';
import { useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { MoreRows } from '../desk/more-rows.tsx';
import { Page } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { findingReads } from '../finding/moves.tsx';
import { useOverview, useProjectId } from '../project/project-frame.tsx';
import { FindingChooser } from './finding-chooser.tsx';
import { useOfferable } from './use-offerable.ts';

/** Which priced findings the client decides on together. */
export function NewChangeOrderScreen() {
  const projectId = useProjectId();
  const overview = useOverview();
  const { findings, rows } = useOfferable(projectId);
  const navigate = useNavigate();
  const [ticks, setTicks] = useState<ReadonlyMap<string, boolean>>(new Map());
  // What the client declined is offered again only on purpose.
  const chosen = rows.filter((row) => ticks.get(row.id) ?? row.state === 'priced').map((row) => row.id);
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
      <Reading query={findings} doing="Reading the priced findings">
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
                onToggle={(id, on) => setTicks((before) => new Map(before).set(id, on))}
              />
              <MoreRows pages={findings} what="findings" />
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
