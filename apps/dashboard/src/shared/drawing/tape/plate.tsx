import { clamp } from '../frame.ts';
import { DimensionLine, Hatch } from '../marks.tsx';
import type { TapeProps } from '../tape-picture.tsx';
import { Board, Picture, Word } from './pieces.tsx';

const inch = (inputs: TapeProps['inputs'], name: string, fallback: number): number =>
  typeof inputs[name] === 'number' ? inputs[name] : fallback;

const left = 16;
const long = 268;

/** The top plate seen from above, its full width measured. */
export function PlateWidth({ value, t }: TapeProps) {
  const wide = clamp((value ?? 3.5) * 26, 30, 150);
  return (
    <Picture height={wide + 62} title={t('plateWidthTitle')}>
      <Board x={left} y={24} width={long} height={wide} />
      <Word x={left + 12} y={44}>
        {t('plate')}
      </Word>
      <DimensionLine
        x1={left + long}
        y1={24}
        x2={left + long}
        y2={24 + wide}
        off={40}
        {...(value === null ? { label: '?' } : { inches: value })}
        textPx={19}
        bold
      />
    </Picture>
  );
}

/** The plate from above with the cut from one edge; the cut grows with the value, what is left stands beside it. */
export function PlateCut({ value, inputs, t }: TapeProps) {
  const widthIn = inch(inputs, 'widthIn', 3.5);
  const pxPerIn = clamp(150 / widthIn, 12, 42);
  const wide = widthIn * pxPerIn;
  const cutIn = clamp(value ?? widthIn * 0.4, 0, widthIn);
  const cut = cutIn * pxPerIn;
  return (
    <Picture height={wide + 66} title={t('plateCutTitle')}>
      <Board x={left} y={22} width={long} height={wide} />
      <rect fill="var(--sheet)" x={left + 92} y={21} width={84} height={cut + 1} />
      <Hatch x={left + 92} y={22} width={84} height={cut} color="var(--ink-soft)" dashed={value === null} />
      <path className="d-thick" d={`M${left + 92} 22v${cut}h84v${-cut}`} />
      <Word x={left + long - 12} y={22 + wide - 12} anchor="end">
        {t('plate')}
      </Word>
      <Word x={left + 134} y={22 + Math.max(18, cut / 2 + 5)} anchor="middle">
        {t('cut')}
      </Word>
      <DimensionLine
        x1={left + long}
        y1={22}
        x2={left + long}
        y2={22 + cut}
        off={40}
        {...(value === null ? { label: '?' } : { inches: cutIn })}
        textPx={19}
        bold
      />
      {value !== null && widthIn - cutIn > 0.2 && (
        <DimensionLine
          x1={left + 92}
          y1={22 + cut}
          x2={left + 92}
          y2={22 + wide}
          off={-26}
          inches={widthIn - cutIn}
          textPx={16}
        />
      )}
    </Picture>
  );
}

/** A steel tie across the cut, and how far it runs past it. */
export function PlateTie({ inputs, t }: TapeProps) {
  const tie = (inputs.tie ?? {}) as Record<string, unknown>;
  const past = inch(tie, 'pastOpeningIn', 6);
  const reach = clamp(past * 9, 14, 92);
  return (
    <Picture height={170} title={t('plateTieTitle')}>
      <Board x={left} y={24} width={long + 50} height={92} />
      <rect fill="var(--sheet)" x={135} y={23} width={80} height={54} />
      <path className="d-thick" d="M135 24v52h80v-52" />
      <rect className="d-metal" x={135 - reach} y={40} width={80 + 2 * reach} height={26} fillOpacity={0.9} />
      {[0.25, 0.5, 0.75].flatMap((share) =>
        [135 - reach * share, 215 + reach * share].map((x) => (
          <circle key={x} className="d-ink" cx={x} cy={53} r={2.6} />
        )),
      )}
      <DimensionLine
        x1={215}
        y1={116}
        x2={215 + reach}
        y2={116}
        off={34}
        {...(typeof tie.pastOpeningIn === 'number' ? { inches: past } : { label: '?' })}
        textPx={19}
        bold
      />
      <Word x={175} y={94} anchor="middle">
        {t('cut')}
      </Word>
    </Picture>
  );
}
