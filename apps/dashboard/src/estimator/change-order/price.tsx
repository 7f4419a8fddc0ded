import { type ChangeOrder, type RangeShape, routes } from '@underlath/contract';
import { useState } from 'react';
import { useRoute } from '../../shared/api/hooks.ts';
import { Facts } from '../../shared/ui/facts.tsx';
import { Money, WasIs } from '../../shared/ui/money.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { Part } from '../desk/page.tsx';
import { plural } from '../desk/words.ts';
import { LikelyPrice } from '../estimate/likely-price.tsx';
import { PlaceholderNote, PriceTable } from '../estimate/price-table.tsx';

/** Lines footed to the total, and what each finding carries of it. */
export function OrderPrice({ order }: { order: ChangeOrder }) {
  const { price, items } = order.draft;
  // What was answered is fixed; a range speaks of what is still to be offered.
  const open = order.state === 'draft' || order.state === 'sent';
  const [shape, setShape] = useState<RangeShape>('pert-beta');
  const asked = { params: { changeOrderId: order.id }, query: { shape } };
  const range = useRoute(routes.getChangeOrderRange, open ? asked : null);
  return (
    <>
      {price.placeholder && <PlaceholderNote version={price.costBookVersion} />}
      <Part title="Lines">
        <PriceTable scope={price} caption="Price lines of the change order" />
      </Part>
      {open && <LikelyPrice query={range} shape={shape} onShape={setShape} />}
      <Part title="Share of each finding" lead="Shared work is divided; the shares add up to the total.">
        <Facts
          facts={items.map((item) => ({
            name: `${item.number}. ${item.title}`,
            value: <Money cents={item.shareCents} />,
            note:
              item.aloneCents === undefined ? (
                item.place.name
              ) : (
                <>
                  {item.place.name}. Alone <Money cents={item.aloneCents} />
                </>
              ),
          }))}
        />
        <p className="shares-foot">
          <span>Total</span>
          <Money cents={items.reduce((sum, item) => sum + item.shareCents, 0)} />
        </p>
      </Part>
      {order.state === 'sent' && <Choices order={order} />}
    </>
  );
}

/** What the client sees when single findings are left out. */
function Choices({ order }: { order: ChangeOrder }) {
  const { parts, items } = order.draft;
  if (!parts) return null;
  const numbers = (ids: readonly string[]) =>
    items
      .filter(({ findingId }) => ids.includes(findingId))
      .map(({ number }) => number)
      .join(', ');
  return (
    <Part title="If findings are left out" lead="The client may choose. Each choice was priced when it was sent.">
      <Facts
        facts={parts.map(({ findingIds, price, days }) => ({
          name: `Only ${findingIds.length === 1 ? 'finding' : 'findings'} ${numbers(findingIds)}`,
          value: <Money cents={price.totalCents} />,
          note: plural(days, 'day'),
        }))}
      />
    </Part>
  );
}

/** What it does to the contract: the sum, the days, the finish, was and is. */
export function OrderContract({ order }: { order: ChangeOrder }) {
  const { contract } = order.draft;
  return (
    <Part title="What it does to the contract">
      <Facts
        facts={[
          {
            name: 'Contract sum',
            value: <WasIs was={<Money cents={contract.beforeCents} />} is={<Money cents={contract.afterCents} />} />,
          },
          { name: 'This change', value: <Money cents={contract.thisChangeCents} sign /> },
          {
            name: 'Contract days',
            value: <WasIs was={plural(contract.daysBefore, 'day')} is={plural(contract.daysAfter, 'day')} />,
          },
          {
            name: 'Finish',
            value:
              contract.finishBefore && contract.finishAfter ? (
                <WasIs was={<Stamp at={contract.finishBefore} />} is={<Stamp at={contract.finishAfter} />} />
              ) : (
                'no start date set'
              ),
          },
          ...(contract.payments ?? []).map(({ name, cents }) => ({
            name: `Added to “${name.en}”`,
            value: <Money cents={cents} sign />,
          })),
        ]}
      />
    </Part>
  );
}
