import type { Check } from '@underlath/rules';
import { isAsked, keysOf, type Label } from '@underlath/rules/drawing';
import { type Field, formatLength, type Locale } from '@underlath/rules/kernel';
import type { ReactNode } from 'react';
import { formatNumber } from '../i18n/format.ts';
import { useLocale, useT } from '../i18n/locale.tsx';
import { measureWords } from '../i18n/messages/measure.ts';
import { pictureWords } from '../i18n/messages/pictures.ts';
import { pictureOf } from '../measure/form.ts';
import { DrawingKey, DrawingSheet, useCheckDrawing } from './check-drawing.tsx';
import { NutKind, RodDiameter, RodProjection } from './tape/anchor.tsx';
import { SeatAtEnd, SeatConnection, SeatLength, SeatWidth } from './tape/bearing.tsx';
import { SectionLoss } from './tape/decay.tsx';
import { HangerFastener, HangerGap, HangerNails, HangerWidth } from './tape/hanger.tsx';
import { AcrossGrain, GrainDirection } from './tape/movement.tsx';
import { NailKinds, SurveyLength } from './tape/nails.tsx';
import { PlateCut, PlateTie, PlateWidth } from './tape/plate.tsx';
import './drawing.css';

export type TapeProps = {
  /** The field that asks. */
  name: string;
  /** The live answer of the field the picture belongs to; null while it is not measured. */
  value: number | null;
  /** All answers of the check so far, for what else the picture shows. */
  inputs: Readonly<Record<string, unknown>>;
  t: ReturnType<typeof useT<keyof (typeof pictureWords)['en']>>;
};

type Draw = (props: TapeProps) => ReactNode;

/** By the picture ids that fields name: drawings that move with the answer. Every other field uses its check's own. */
const tapes: Record<string, Draw> = {
  'rod-projection': RodProjection,
  'rod-diameter': RodDiameter,
  'nut-kind': NutKind,
  'plate-width': PlateWidth,
  'plate-cut': PlateCut,
  'plate-tie': PlateTie,
  'seat-length': SeatLength,
  'seat-width': SeatWidth,
  'seat-connection': SeatConnection,
  'seat-at-end': SeatAtEnd,
  'hanger-width': HangerWidth,
  'hanger-seat-gap': (props) => <HangerGap {...props} of="seat" />,
  'hanger-end-gap': (props) => <HangerGap {...props} of="end" />,
  'hanger-nails': HangerNails,
  'hanger-fastener': HangerFastener,
  'nail-depth': NailKinds,
  'nail-survey': SurveyLength,
  'grain-direction': GrainDirection,
  'member-depth': AcrossGrain,
  'section-size': SectionLoss,
  'decay-loss': SectionLoss,
};

/** Every picture that has a drawing of its own. */
export const drawnTapeIds: readonly string[] = Object.keys(tapes);

type TapePictureProps = {
  check: Check;
  name: string;
  field: Field;
  value: unknown;
  inputs: Readonly<Record<string, unknown>>;
};

/** Where the tape goes: a drawing that moves with the answer where there is one, else the check's own drawing. */
export function TapePicture({ check, name, field, value, inputs }: TapePictureProps) {
  const t = useT(pictureWords);
  const Draw = tapes[pictureOf(field) ?? ''];
  if (!Draw) return <OwnDrawing check={check} name={name} field={field} value={value} />;
  return (
    <figure className="tape">
      <Draw name={name} value={typeof value === 'number' ? value : null} inputs={inputs} t={t} />
    </figure>
  );
}

/** Whether a field measures a length, itself or in its parts: then its check's drawing shows it. */
const measuresLength = (field: Field): boolean =>
  field.kind === 'length' ||
  (field.kind === 'group' && Object.values(field.fields).some(measuresLength)) ||
  (field.kind === 'list' && Object.values(field.item).some(measuresLength));

/** The check's drawing with what is asked for standing out and its answer on it; nothing when it is not drawn. */
function OwnDrawing({ check, name, field, value }: Omit<TapePictureProps, 'inputs'>) {
  const { tag } = useLocale();
  const { drawing, failed } = useCheckDrawing(check);
  const asked = drawing ? keysOf(drawing).filter((of) => isAsked(of, name)) : [];
  if (drawing ? asked.length === 0 : !measuresLength(field)) return null;
  const answer = answerLabel(field, value, tag);
  return (
    <figure className="tape">
      <DrawingSheet
        drawing={drawing}
        failed={failed}
        options={{ asked: name, ...(answer === undefined ? {} : { answer }) }}
      />
      {drawing && asked.length > 1 && <DrawingKey check={check} drawing={drawing} asked={name} askedOnly />}
    </figure>
  );
}

/** What stands on the dimension: the length or number so far, "?" (undefined) before, nothing for other answers. */
function answerLabel(field: Field, value: unknown, tag: string): Label | null | undefined {
  if (field.kind !== 'length' && field.kind !== 'number' && field.kind !== 'count') return null;
  if (typeof value !== 'number') return undefined;
  if (field.kind !== 'length') return { words: formatNumber(value, tag, 3) };
  const inches = field.unit === 'ft' ? value * 12 : value;
  return { words: formatLength(inches), inches };
}

/** The words of the sign switch for a measurement that may fall on either side of its mark. */
export function signWordsOf(id: string | undefined, locale: Locale): { positive: string; negative: string } | null {
  if (id !== 'rod-projection') return null;
  const words = measureWords[locale];
  return { positive: String(words.pastNut), negative: String(words.belowNut) };
}
