import { clamp } from '../frame.ts';
import { Dimension } from '../marks.tsx';
import type { TapeProps } from '../tape-picture.tsx';
import { Board, Picture, Word } from './pieces.tsx';

/** Nails through a panel into a stud, cut open: flush, driven too deep, too near the edge, and into nothing. */
export function NailKinds({ t }: TapeProps) {
  const nails = [
    { x: 46, deep: 0, word: t('flush') },
    { x: 130, deep: 14, word: t('tooDeep') },
    { x: 222, deep: 0, word: t('tooNear') },
    { x: 304, deep: 0, word: t('missedWord') },
  ];
  return (
    <Picture height={216} title={t('nailKindsTitle')}>
      <Board x={8} y={96} width={226} height={84} />
      <rect className="d-wood-deep" x={8} y={58} width={226} height={38} />
      <rect className="d-wood-deep" x={250} y={58} width={92} height={38} />
      {nails.map((nail) => (
        <g key={nail.word}>
          {nail.deep > 0 && <path className="d-sheet" d={`M${nail.x - 14} 58h28l-5 ${nail.deep}h-18z`} />}
          <path className="d-steel" d={`M${nail.x} ${58 + nail.deep}v86`} strokeWidth={4} />
          <path className="d-steel" d={`M${nail.x - 11} ${57 + nail.deep}h22`} strokeWidth={5} />
        </g>
      ))}
      <Word x={46} y={40} anchor="middle">
        {t('flush')}
      </Word>
      <Word x={130} y={40} anchor="middle">
        {t('tooDeep')}
      </Word>
      <Word x={214} y={20} anchor="middle">
        {t('tooNear')}
      </Word>
      <Word x={304} y={40} anchor="middle">
        {t('missedWord')}
      </Word>
      <path className="d-thin" d="M222 26v26" />
      <Word x={16} y={206}>
        {t('panel')}
      </Word>
      <path className="d-thin" d="M38 192l10 -108" />
    </Picture>
  );
}

/** The panel's edge nails, center to center. */
export function NailSpacing({ value, t }: TapeProps) {
  const gap = clamp((value ?? 4) * 15, 24, 120);
  const xs = Array.from({ length: Math.ceil(320 / gap) }, (_, at) => 26 + at * gap).filter((x) => x < 330);
  return (
    <Picture height={146} title={t('nailSpacingTitle')}>
      <rect className="d-panel" x={8} y={24} width={334} height={66} />
      {xs.map((x) => (
        <circle key={x} className="d-ink" cx={x} cy={74} r={4} />
      ))}
      <Dimension
        x1={26}
        y1={78}
        x2={26 + gap}
        y2={78}
        off={42}
        {...(value === null ? { label: '?' } : { inches: value })}
        textPx={19}
        bold
      />
      <Word x={334} y={46} anchor="end">
        {t('panel')}
      </Word>
    </Picture>
  );
}

/** How long a piece of the edge was looked at. */
export function SurveyLength({ value, t }: TapeProps) {
  return (
    <Picture height={146} title={t('surveyLengthTitle')}>
      <rect className="d-panel" x={8} y={24} width={334} height={66} />
      {Array.from({ length: 16 }, (_, at) => 22 + at * 20).map((x) => (
        <circle key={x} className="d-ink" cx={x} cy={74} r={x > 60 && x < 290 ? 4 : 2} />
      ))}
      <Dimension
        x1={72}
        y1={78}
        x2={280}
        y2={78}
        off={42}
        {...(value === null ? { label: '?' } : { inches: value })}
        textPx={19}
        bold
      />
    </Picture>
  );
}

/** A panel's edge, and how thick it is. */
export function PanelThickness({ value, t }: TapeProps) {
  const thick = clamp((value ?? 0.47) * 100, 22, 80);
  return (
    <Picture height={150} title={t('panelThickTitle')}>
      <rect className="d-wood-deep" x={20} y={36} width={250} height={thick} />
      {[0.25, 0.5, 0.75].map((share) => (
        <path key={share} className="d-grain" d={`M20 ${36 + thick * share}h250`} />
      ))}
      <Dimension
        x1={270}
        y1={36}
        x2={270}
        y2={36 + thick}
        off={36}
        {...(value === null ? { label: '?' } : { inches: value })}
        textPx={19}
        bold
      />
      <Word x={30} y={28}>
        {t('panel')}
      </Word>
    </Picture>
  );
}
