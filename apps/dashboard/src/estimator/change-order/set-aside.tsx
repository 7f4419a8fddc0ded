import { type ChangeOrder, routes } from '@underlath/contract';
import { useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { orderReads } from './reads.ts';

/** The way out of a change order that should not be: a draft is thrown away, what was sent is set aside. */
export function SetAside({ order }: { order: ChangeOrder }) {
  const announce = useAnnounce();
  const [asking, setAsking] = useState(false);
  const change = useChange(routes.setAsideChangeOrder, {
    invalidates: orderReads,
    onDone: () => {
      setAsking(false);
      announce(`Change order ${order.number} is set aside.`);
    },
  });
  if (order.state !== 'draft' && order.state !== 'sent') return null;
  const wasSent = order.versions.length > 0;
  const what = wasSent ? 'Set aside' : 'Throw away';
  return (
    <>
      <Button look="quiet" onClick={() => setAsking(true)}>
        {what}
      </Button>
      <Dialog
        open={asking}
        title={`${what} change order ${order.number}?`}
        onClose={() => setAsking(false)}
        actions={
          <>
            <Button onClick={() => setAsking(false)}>Keep it</Button>
            <Button
              look="go"
              busy={change.isPending}
              onClick={() => change.mutate({ params: { changeOrderId: order.id }, ifMatch: order.version })}
            >
              {what}
            </Button>
          </>
        }
      >
        <p>
          Its findings keep their prices and can go into another change order. Number {order.number} is not used again,
          and the record says that it was set aside. This cannot be undone.
        </p>
        {order.state === 'sent' && (
          <p>The client has a link to it. It stops working at once, and nothing can be approved with it.</p>
        )}
        <FormFail problem={change.error ? problemOf(change.error) : null} doing="Setting it aside" />
      </Dialog>
    </>
  );
}
