import { useParams } from '@tanstack/react-router';
import { type ChangeOrder, routes } from '@underlath/contract';
import { useState } from 'react';
import { useRoute } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Tabs } from '../../shared/ui/tabs.tsx';
import { LetterPreview } from '../parts/letter-preview.tsx';
import { OrderMails } from '../parts/order-mails.tsx';
import { OrderContract, OrderPrice } from '../parts/order-price.tsx';
import { OrderQuestions } from '../parts/order-questions.tsx';
import { OrderVersions } from '../parts/order-versions.tsx';
import { OrderWording } from '../parts/order-wording.tsx';
import { Page } from '../parts/page.tsx';
import { useOverview } from '../parts/project-frame.tsx';
import { Reading } from '../parts/reading.tsx';
import { SendDialog } from '../parts/send-dialog.tsx';
import { changeOrderWord } from '../parts/words.ts';
import '../order.css';

type View = 'letter' | 'wording' | 'price';

/** One change order from draft to decision. */
export function ChangeOrderScreen() {
  const { changeOrderId } = useParams({ from: '/in/desk/projects/$projectId/change-orders/$changeOrderId' });
  const overview = useOverview();
  const [sending, setSending] = useState(false);
  const order = useRoute(routes.getChangeOrder, { params: { changeOrderId } });
  const data = order.data;
  return (
    <Page
      title={data ? `Change order ${data.number}` : 'Change order'}
      of={overview.data?.project.name}
      wide
      lead={data && <StateWords order={data} />}
      actions={
        data?.state === 'draft' && (
          <Button look="go" disabled={data.blocks.length > 0} onClick={() => setSending(true)}>
            Send to the client
          </Button>
        )
      }
    >
      <Reading query={order} doing="Reading the change order" rows={8}>
        {(found) => (
          <>
            <Blocks order={found} />
            <Conflicts order={found} />
            <div className="order-page">
              <Views order={found} />
              <div className="order-aside">
                <OrderQuestions order={found} />
                <OrderVersions order={found} />
                <OrderMails order={found} />
                <OrderContract order={found} />
              </div>
            </div>
            {sending && <SendDialog order={found} onClose={() => setSending(false)} />}
          </>
        )}
      </Reading>
    </Page>
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

function Views({ order }: { order: ChangeOrder }) {
  const [view, setView] = useState<View>('letter');
  return (
    <Tabs<View>
      label="Parts of the change order"
      value={view}
      onChange={setView}
      items={[
        { value: 'letter', label: 'The letter', panel: <LetterPreview order={order} /> },
        {
          value: 'wording',
          label: 'Wording, days, findings',
          panel: <OrderWording key={order.id} order={order} />,
        },
        { value: 'price', label: 'Price', panel: <OrderPrice order={order} /> },
      ]}
    />
  );
}
