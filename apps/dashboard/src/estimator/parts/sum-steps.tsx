import type { Contract } from '@underlath/contract';
import { useId, useRef } from 'react';
import { useSize } from '../../shared/drawing/use-size.ts';
import { formatCents } from '../../shared/i18n/format.ts';

type Step = { key: string; name: string; fromCents: number; toCents: number; pending: boolean };

/** Room for a sum's digits; with more changes than fit, the stairs scroll. */
const leastSlotPx = 118;

/** The sum as stairs: each approved change lifts it, what waits is drawn with a dashed line. */
export function SumSteps({ contract }: { contract: Contract }) {
  const ref = useRef<HTMLDivElement>(null);
  const { widthPx, textPx } = useSize(ref, { widthPx: 800, textPx: 14 });
  const id = useId();
  const steps = stepsOf(contract);
  const low = Math.min(contract.originalSumCents, ...steps.map((step) => step.toCents));
  const high = Math.max(contract.originalSumCents, ...steps.map((step) => step.toCents));
  if (steps.length === 0) return null;
  const heightPx = 190;
  const [top, bottom] = [textPx * 2 + 12, heightPx - textPx * 2];
  // The stairs show differences, so the floor of the plot is just under the lowest sum and no bar is filled down to it.
  const y = (cents: number) => bottom - ((cents - low) / Math.max(1, high - low)) * (bottom - top);
  const slot = Math.max(leastSlotPx, (widthPx - 8) / (steps.length + 1));
  const drawnPx = slot * (steps.length + 1) + 8;
  const money = (cents: number) => formatCents(cents, 'en-US', { trim: true });
  const words = steps.map((step) => `${step.name}: ${money(step.toCents)}${step.pending ? ', not approved' : ''}`);
  return (
    <div className="sum-steps" ref={ref}>
      <svg
        className="drawing"
        width={drawnPx}
        height={heightPx}
        viewBox={`0 0 ${drawnPx} ${heightPx}`}
        role="img"
        aria-labelledby={id}
      >
        <title id={id}>{`Contract sum, from ${money(contract.originalSumCents)}. ${words.join('. ')}`}</title>
        <StepMark
          x={4}
          width={slot}
          y={y(contract.originalSumCents)}
          textPx={textPx}
          name="Original"
          sum={money(contract.originalSumCents)}
        />
        {steps.map((step, at) => (
          <g key={step.key}>
            <line
              className={step.pending ? 'd-dashed' : 'd-thin'}
              x1={4 + slot * (at + 1)}
              x2={4 + slot * (at + 1)}
              y1={y(step.fromCents)}
              y2={y(step.toCents)}
            />
            <StepMark
              x={4 + slot * (at + 1)}
              width={slot}
              y={y(step.toCents)}
              textPx={textPx}
              name={step.name}
              sum={money(step.toCents)}
              pending={step.pending}
            />
          </g>
        ))}
      </svg>
    </div>
  );
}

function stepsOf(contract: Contract): Step[] {
  let sum = contract.originalSumCents;
  return [
    ...contract.approved.map((line) => ({ line, pending: false })),
    ...contract.pending.map((line) => ({ line, pending: true })),
  ].map(({ line, pending }) => {
    const fromCents = sum;
    sum += line.cents;
    return {
      key: line.changeOrderId,
      name: `No. ${line.number}${pending ? ', waiting' : ''}`,
      fromCents,
      toCents: sum,
      pending,
    };
  });
}

type StepMarkProps = {
  x: number;
  width: number;
  y: number;
  textPx: number;
  name: string;
  sum: string;
  pending?: boolean;
};

function StepMark({ x, width, y, textPx, name, sum, pending }: StepMarkProps) {
  return (
    <>
      <line className={pending ? 'step step-pending' : 'step'} x1={x} x2={x + width} y1={y} y2={y} />
      <text x={x + 4} y={y - 8} fontSize={textPx} fontWeight={700}>
        {sum}
      </text>
      <text x={x + 4} y={y + textPx + 5} fontSize={textPx} className="d-soft">
        {name}
      </text>
    </>
  );
}
