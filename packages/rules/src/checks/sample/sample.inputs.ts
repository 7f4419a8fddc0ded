import { assume, type InputIssue, number, refuse, type Text, text } from '../../kernel/index.ts';
import { TOLERABLE_SOURCE, USUAL_CONFIDENCE_PCT } from '../../standards/common-practice/sampling.data.ts';

export const confidenceInput = number({
  unit: 'pct',
  min: 50,
  max: 99.9,
  default: USUAL_CONFIDENCE_PCT,
  assumes: assume(
    text(
      `${USUAL_CONFIDENCE_PCT}% confidence is asked for, as is usual.`,
      `Se pide ${USUAL_CONFIDENCE_PCT}% de confianza, como es usual.`,
    ),
    TOLERABLE_SOURCE,
  ),
  label: text('Confidence', 'Confianza'),
});

export const SPREAD_SAMPLE = text(
  'This counts only for a sample spread by chance over floors and crews. Bad work comes in clusters: count each wall or crew by itself.',
  'Solo vale si la muestra se reparte al azar por pisos y cuadrillas. Lo malo viene en grupos: cuente cada pared o cuadrilla aparte.',
);

/** A count that must not be more than another one; each with its name in the trade. */
export const countIssue = (
  path: string,
  [part, partWords]: readonly [number | undefined, Text],
  [whole, wholeWords]: readonly [number | undefined, Text],
): InputIssue[] =>
  part !== undefined && whole !== undefined && part > whole
    ? [
        refuse(
          [path],
          part,
          text(`at most ${whole}`, `hasta ${whole}`),
          text(
            `${partWords.en}: ${part} is more than ${whole}, ${wholeWords.en}.`,
            `${partWords.es}: ${part} es más que ${whole}, ${wholeWords.es}.`,
          ),
        ),
      ]
    : [];
