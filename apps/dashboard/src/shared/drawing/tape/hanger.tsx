import { clamp } from '../frame.ts';
import { DimensionLine, Hatch } from '../marks.tsx';
import type { TapeProps } from '../tape-picture.tsx';
import { Board, BoardEnd, Picture, Word } from './pieces.tsx';

/** Joist end and hanger, looking along the joist: the joist's width, or once that is known the hanger's beside it. */
export function HangerWidth({ name, value, inputs, t }: TapeProps) {
  const of = name === 'hangerWidthIn' ? 'hanger' : 'member';
  const read = (input: string, fallback: number) => (typeof inputs[input] === 'number' ? inputs[input] : fallback);
  const memberIn = read('memberWidthIn', 1.5);
  const hangerIn = read('hangerWidthIn', memberIn);
  const pxPerIn = clamp(120 / Math.max(memberIn, hangerIn), 14, 52);
  const [member, hanger] = [memberIn * pxPerIn, hangerIn * pxPerIn];
  const measured = of === 'member' ? member : hanger;
  return (
    <Picture height={236} title={t('hangerWidthTitle')}>
      <Board x={10} y={10} width={330} height={168} />
      <BoardEnd x={175 - member / 2} y={34} width={member} height={134} />
      <path className="d-steel" d={`M${175 - hanger / 2 - 22} 70h22v102h${hanger}v-102h22`} strokeWidth={4} />
      {[86, 108, 130].flatMap((y) =>
        [175 - hanger / 2 - 12, 175 + hanger / 2 + 12].map((x) => (
          <circle key={`${x}${y}`} className="d-ink" cx={x} cy={y - 8} r={2.8} />
        )),
      )}
      <Word x={20} y={32}>
        {t('header')}
      </Word>
      <Word x={175} y={56} anchor="middle">
        {t('joist')}
      </Word>
      <DimensionLine
        x1={175 - measured / 2}
        y1={178}
        x2={175 + measured / 2}
        y2={178}
        off={34}
        {...(value === null ? { label: '?' } : { inches: value })}
        textPx={19}
        bold
      />
    </Picture>
  );
}

/** From the side: the gap under the joist in its seat, or between its end and the header. */
export function HangerGap({ value, t, of }: TapeProps & { of: 'seat' | 'end' }) {
  const gap = clamp((value ?? 0.125) * 90, value === 0 ? 0 : 5, 60);
  const endGap = of === 'end' ? gap : 4;
  const seatGap = of === 'seat' ? gap : 2;
  const bottom = 150;
  return (
    <Picture height={222} title={t('hangerGapTitle')}>
      <Board x={8} y={20} width={78} height={150} plain />
      <Board x={86 + endGap} y={30} width={254 - endGap} height={bottom - seatGap - 30} />
      <path className="d-steel" d={`M86 44v${bottom - 44}h92`} strokeWidth={5} />
      <Word x={16} y={42}>
        {t('header')}
      </Word>
      <Word x={250} y={80} anchor="middle">
        {t('joist')}
      </Word>
      <Word x={186} y={168}>
        {t('hanger')}
      </Word>
      {of === 'seat' ? (
        <>
          {gap > 0 && <Hatch x={92} y={bottom - gap} width={84} height={gap} color="var(--ink-soft)" />}
          <DimensionLine
            x1={300}
            y1={bottom - gap}
            x2={300}
            y2={bottom}
            off={22}
            {...(value === null ? { label: '?' } : { inches: value })}
            textPx={19}
            bold
          />
        </>
      ) : (
        <>
          {gap > 0 && <Hatch x={86} y={34} width={gap} height={110} color="var(--ink-soft)" />}
          <DimensionLine
            x1={86}
            y1={150}
            x2={86 + gap}
            y2={150}
            off={44}
            {...(value === null ? { label: '?' } : { inches: value })}
            textPx={19}
            bold
          />
        </>
      )}
    </Picture>
  );
}

/** Which holes count: those into the header, or those into the joist, are filled. */
export function HangerNails({ name, t }: TapeProps) {
  const on = (part: string) => (part === name ? 'd-ink' : 'd-thin');
  return (
    <Picture height={196} title={t('hangerNailsTitle')}>
      <Board x={10} y={8} width={330} height={180} />
      <BoardEnd x={145} y={22} width={60} height={142} />
      <path className="d-metal-light" d="M100 54h45v112h60v-112h45v44h-37v76h-76v-76h-37z" />
      {[66, 84].flatMap((y) =>
        [114, 132, 218, 236].map((x) => <circle key={`h${x}${y}`} className={on('header')} cx={x} cy={y} r={4.5} />),
      )}
      {[112, 136].flatMap((y) =>
        [141, 209].map((x) => <circle key={`j${x}${y}`} className={on('joist')} cx={x} cy={y} r={4.5} />),
      )}
      <Word x={20} y={30}>
        {t('header')}
      </Word>
      <Word x={175} y={44} anchor="middle">
        {t('joist')}
      </Word>
    </Picture>
  );
}

/** A full nail, a short one and a screw: only the first one holds a hanger. */
export function HangerFastener({ t }: TapeProps) {
  return (
    <Picture height={150} title={t('fastenersTitle')}>
      <path className="d-steel" d="M64 34v84M54 33h20" strokeWidth={5} />
      <path className="d-steel" d="M175 34v38M165 33h20" strokeWidth={5} />
      <path className="d-steel" d="M286 36v70l0 12" strokeWidth={3} />
      <path className="d-thin" d="M280 60l12 -5M280 72l12 -5M280 84l12 -5M280 96l12 -5M274 32h24l-6 8h-12z" />
      <Word x={64} y={142} anchor="middle">
        {t('fullNail')}
      </Word>
      <Word x={175} y={142} anchor="middle" bold={false}>
        {t('shortNail')}
      </Word>
      <Word x={286} y={142} anchor="middle" bold={false}>
        {t('screw')}
      </Word>
      <path className="d-hidden" d="M8 74h334" />
    </Picture>
  );
}
