import { useParams } from '@tanstack/react-router';
import { type ChangeOrder, routes } from '@underlath/contract';
import { useState } from 'react';
import { useRoute } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Tabs } from '../../shared/ui/tabs.tsx';
import { Page } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { changeOrderWord } from '../desk/words.ts';
import { useOverview } from '../project/project-frame.tsx';
import { noEdit } from './draft.ts';
import { LetterPreview } from './letter-preview.tsx';
import { OrderMails } from './mails.tsx';
import { OrderContract, OrderPrice } from './price.tsx';
import { OrderQuestions } from './questions.tsx';
import { SendDialog } from './send-dialog.tsx';
import { SetAside } from './set-aside.tsx';
import { type OrderDraftState, useOrderDraft } from './use-order-draft.ts';
import { OrderVersions } from './versions.tsx';
import { OrderWording } from './wording.tsx';
import './change-order.css';

type View = 'letter' | 'wording' | 'price';

/** One change order from draft to decision. */
export function ChangeOrderScreen() {
  const { changeOrderId } = useParams({ from: '/in/desk/projects/$projectId/change-orders/$changeOrderId' });
  const order = useRoute(routes.getChangeOrder, { params: { changeOrderId } });
  if (order.data) return <OrderPage key={order.data.id} order={order.data} />;
  return (
    <Page title="Change order" wide>
      <Reading query={order} doing="Reading the change order" rows={8}>
        {() => null}
      </Reading>
    </Page>
  );
}

function OrderPage({ order }: { order: ChangeOrder }) {
  const overview = useOverview();
  const [sending, setSending] = useState(false);
  const draft = useOrderDraft(order);
  return (
    <Page
      title={`Change order ${order.number}`}
      of={overview.data?.project.name}
      wide
      lead={<StateWords order={order} />}
      actions={
        <>
          <SetAside order={order} />
          {order.state === 'draft' && (
            <Button look="go" disabled={order.blocks.length > 0 || draft.touched} onClick={() => setSending(true)}>
              Send to the client
            </Button>
          )}
        </>
      }
    >
      {draft.touched && <Unsaved order={order} draft={draft} />}
      <Blocks order={order} />
      <Conflicts order={order} />
      <div className="order-page">
        <Views order={order} draft={draft} />
        <div className="order-aside">
          <OrderQuestions order={order} />
          <OrderVersions order={order} />
          <OrderMails order={order} />
          <OrderContract order={order} />
        </div>
      </div>
      {sending && <SendDialog order={order} onClose={() => setSending(false)} />}
    </Page>
  );
}

/** What is typed and not saved, and where it is. */
function Unsaved({ order, draft }: { order: ChangeOrder; draft: OrderDraftState }) {
  return (
    <div className="notice row">
      <p>
        <b>Not saved yet.</b>{' '}
        {draft.isKept
          ? 'What you typed under “Wording, days, findings” stays in this browser until you save it there or put it back. The letter and the price show what is saved.'
          : 'This browser keeps nothing: save before you leave the page.'}
        {draft.base !== order.version &&
          ' The change order has changed since you began; saving puts what you typed in place of what is there.'}
      </p>
      <Button look="quiet" onClick={() => draft.startFrom(noEdit, order.version)}>
        Put back what was saved
      </Button>
    </div>
  );
}

function StateWords({ order }: { order: ChangeOrder }) {
  return (
    <p>
      <b>{changeOrderWord(order.state)}.</b> {order.headline}
    </p>
  );
}

function Blocks({ order }: { order: ChangeOrder }) {
  if (order.state !== 'draft' || order.blocks.length === 0) return null;
  return (
    <div className="notice">
      <p>
        <b>It can’t be sent yet.</b>
      </p>
      <ul className="bulleted">
        {order.blocks.map((block) => (
          <li key={block}>{block}</li>
        ))}
      </ul>
    </div>
  );
}

function Conflicts({ order }: { order: ChangeOrder }) {
  if (order.conflicts.length === 0) return null;
  return (
    <div className="notice">
      <ul className="bulleted">
        {order.conflicts.map((conflict) => (
          <li key={conflict}>{conflict}</li>
        ))}
      </ul>
    </div>
  );
}

function Views({ order, draft }: { order: ChangeOrder; draft: OrderDraftState }) {
  const [view, setView] = useState<View>('letter');
  return (
    <Tabs<View>
      label="Parts of the change order"
      value={view}
      onChange={setView}
      items={[
        {
          value: 'letter',
          label: 'The letter',
          panel: <LetterPreview order={order} />,
        },
        {
          value: 'wording',
          label: 'Wording, days, findings',
          panel: <OrderWording order={order} state={draft} />,
        },
        { value: 'price', label: 'Price', panel: <OrderPrice order={order} /> },
      ]}
    />
  );
}
