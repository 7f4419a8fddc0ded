import { useQuery } from '@tanstack/react-query';
import type { Check, CheckCard } from '@underlath/rules';
import {
  inputLabels,
  isAsked,
  keysOf,
  type LayOutOptions,
  layOut,
  letterAt,
  type Mark,
} from '@underlath/rules/drawing';
import { type Drawing, SHEET, say } from '@underlath/rules/kernel';
import { useId, useRef } from 'react';
import { useLocale, useT } from '../i18n/locale.tsx';
import { drawingWords } from '../i18n/messages/drawing.ts';
import { LengthSpans } from './marks.tsx';
import { useSize } from './use-size.ts';
import './drawing.css';

/** A check's own drawing. It comes with the program, so it is read once and needs no signal after that. */
export function useCheckDrawing(check: CheckCard | undefined): { drawing: Drawing | undefined; failed: boolean } {
  const query = useQuery({
    queryKey: ['drawing', check?.id],
    queryFn: async () => (check ? (await check.drawing()).drawing : null),
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: Number.POSITIVE_INFINITY,
    networkMode: 'always',
  });
  return { drawing: query.data ?? undefined, failed: query.isError };
}

/** The paths and words of a laid-out drawing. */
export function Marks({ marks }: { marks: readonly Mark[] }) {
  return marks.map((mark, at) =>
    'd' in mark ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: the marks of one drawing never change their order
      <path key={at} className={`m-${mark.pen}`} d={mark.d} />
    ) : (
      <text
        // biome-ignore lint/suspicious/noArrayIndexKey: the marks of one drawing never change their order
        key={at}
        className={`m-${mark.pen}`}
        x={mark.x}
        y={mark.y}
        textAnchor={mark.anchor}
        fontSize={mark.size}
      >
        {mark.inches === undefined ? mark.words : <LengthSpans inches={mark.inches} />}
      </text>
    ),
  );
}

export const sheetBox = `0 0 ${SHEET.width} ${SHEET.height}`;

type SheetProps = {
  drawing: Drawing | undefined;
  failed: boolean;
  options: Omit<LayOutOptions, 'locale' | 'textSize'>;
};

/** A drawing with its words at the size of the words around it. While it loads, an empty sheet keeps its place. */
export function DrawingSheet({ drawing, failed, options }: SheetProps) {
  const ref = useRef<SVGSVGElement>(null);
  const { widthPx, textPx } = useSize(ref, { widthPx: 350, textPx: 17 });
  const { locale } = useLocale();
  const t = useT(drawingWords);
  const id = useId();
  const textSize = (textPx * SHEET.width) / widthPx;
  return (
    <svg ref={ref} className="drawing sheet-drawing" viewBox={sheetBox} role="img" aria-labelledby={id}>
      <title id={id}>{drawing ? say(drawing.title, locale) : failed ? t('drawingFailed') : t('drawingLoading')}</title>
      {drawing && <Marks marks={layOut(drawing, { ...options, locale, textSize })} />}
      {failed && (
        <text className="m-word" x={SHEET.width / 2} y={SHEET.height / 2} textAnchor="middle" fontSize={textSize}>
          {t('drawingFailed')}
        </text>
      )}
    </svg>
  );
}

type DrawingKeyProps = { check: Check; drawing: Drawing; asked?: string | undefined; askedOnly?: boolean };

/** The letters on the drawing with the names of their inputs. */
export function DrawingKey({ check, drawing, asked, askedOnly }: DrawingKeyProps) {
  const { locale } = useLocale();
  const labels = inputLabels(check.inputs, locale);
  return (
    <ul className="drawing-key">
      {keysOf(drawing).map((of, at) =>
        askedOnly && !isAsked(of, asked) ? null : (
          <li key={of} className={isAsked(of, asked) ? 'key-asked' : ''}>
            <b>{letterAt(at)}</b> {labels[of] ?? of}
          </li>
        ),
      )}
    </ul>
  );
}

/** Everything a check measures in one drawing, lettered, with its key. What is asked for just now stands out. */
export function CheckDrawing({ check, asked }: { check: Check; asked?: string | undefined }) {
  const { drawing, failed } = useCheckDrawing(check);
  return (
    <figure className="tape check-drawing">
      <DrawingSheet
        drawing={drawing}
        failed={failed}
        options={{ letters: true, ...(asked === undefined ? {} : { asked }) }}
      />
      {drawing && <DrawingKey check={check} drawing={drawing} asked={asked} />}
    </figure>
  );
}
