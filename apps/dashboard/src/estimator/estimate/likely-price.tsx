import type { EstimateRange, RangeShape } from '@underlath/contract';
import { RangeBar } from '../../shared/drawing/scales.tsx';
import { formatNumber } from '../../shared/i18n/format.ts';
import { RadioGroup } from '../../shared/ui/choice.tsx';
import { Facts } from '../../shared/ui/facts.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { Part } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';

type PriceRangeProps = {
  query: Parameters<typeof Reading<EstimateRange>>[0]['query'];
  shape: RangeShape;
  onShape: (shape: RangeShape) => void;
};

const SHAPES = [
  { value: 'pert-beta', label: 'Near the likely value (PERT)', detail: 'likely counts four times' },
  { value: 'triangular', label: 'Straight to both ends (triangular)', detail: 'wider: surprises weigh more' },
] as const;

/** How far either side of the mean the bar reaches. */
const SPREADS = 2;

/** What the work may come to, as a bar and in words; the price that is printed is one point on it. */
export function LikelyPrice({ query, shape, onShape }: PriceRangeProps) {
  return (
    <Part
      title="What it may come to"
      lead="From the low, likely and high hours of the cost book. Only hours vary here."
    >
      <Reading query={query} doing="Drawing the range" rows={3}>
        {({ range, totalCents, seen, correlation, trials }) =>
          range ? (
            <>
              <RangeBar
                lowCents={Math.max(0, range.meanCents - SPREADS * range.sdCents)}
                p50Cents={range.p50Cents}
                p80Cents={range.p80Cents}
                highCents={Math.max(range.p90Cents, range.meanCents + SPREADS * range.sdCents)}
              />
              <p>
                Of ten jobs like this, five come to at most <Money cents={range.p50Cents} />, eight to at most{' '}
                <Money cents={range.p80Cents} />, nine to at most <Money cents={range.p90Cents} />. Printed is{' '}
                <Money cents={totalCents} />.
              </p>
              <p className="soft">{seen.en}</p>
              <Facts
                facts={[
                  {
                    name: 'Mean and deviation, drawn',
                    value: (
                      <>
                        <Money cents={range.meanCents} /> ± <Money cents={range.sdCents} />
                      </>
                    ),
                    note: `${formatNumber(trials, 'en-US', 0)} trials, hours of one place correlated ${correlation}, of different places ${range.acrossPlaces}`,
                  },
                  {
                    name: 'The same by formula',
                    value:
                      range.analyticMeanCents !== null && range.analyticSdCents !== null ? (
                        <>
                          <Money cents={range.analyticMeanCents} /> ± <Money cents={range.analyticSdCents} />
                        </>
                      ) : (
                        'None: hours may or may not reach a minimum charge'
                      ),
                  },
                  ...range.drivers.slice(0, 3).map(({ name, share }) => ({
                    name,
                    value: `${Math.round(share * 100)}% of the spread`,
                  })),
                ]}
              />
            </>
          ) : (
            <p className="soft">The cost book lacks a rate, so that no range can be drawn. The gap is named above.</p>
          )
        }
      </Reading>
      <RadioGroup
        label="How hours lie between low and high"
        layout="row"
        value={shape}
        options={SHAPES}
        onChange={onShape}
      />
    </Part>
  );
}
