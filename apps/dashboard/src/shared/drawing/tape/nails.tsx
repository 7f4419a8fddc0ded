import { DimensionLine } from '../marks.tsx';
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

/** How long a piece of the edge was looked at. */
export function SurveyLength({ value, t }: TapeProps) {
  return (
    <Picture height={146} title={t('surveyLengthTitle')}>
      <rect className="d-panel" x={8} y={24} width={334} height={66} />
      {Array.from({ length: 16 }, (_, at) => 22 + at * 20).map((x) => (
        <circle key={x} className="d-ink" cx={x} cy={74} r={x > 60 && x < 290 ? 4 : 2} />
      ))}
      <DimensionLine
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
