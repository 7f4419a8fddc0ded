import type { Locale } from '@underlath/rules/kernel';
import type { ReactNode } from 'react';
import { useT } from '../i18n/locale.tsx';
import { measure } from '../i18n/messages/measure.ts';
import { pictures } from '../i18n/messages/pictures.ts';
import { NutKind, RodDiameter, RodProjection } from './tape/anchor.tsx';
import { SeatAtEnd, SeatConnection, SeatLength, SeatWidth } from './tape/bearing.tsx';
import { SectionLoss } from './tape/decay.tsx';
import { GenericTape } from './tape/generic.tsx';
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
  t: ReturnType<typeof useT<keyof (typeof pictures)['en']>>;
};

type Draw = (props: TapeProps) => ReactNode;

/** By the picture ids that the fields of the rules package name; a test holds the two together. */
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

type TapePictureProps = { id: string; name?: string; value: unknown; inputs: Readonly<Record<string, unknown>> };

/** Where the tape goes: drawn, moving with the value. An unknown id gets a plain tape with the value on it. */
export function TapePicture({ id, name = '', value, inputs }: TapePictureProps) {
  const t = useT(pictures);
  const Draw = tapes[id] ?? GenericTape;
  return (
    <figure className="tape">
      <Draw name={name} value={typeof value === 'number' ? value : null} inputs={inputs} t={t} />
    </figure>
  );
}

/** The words of the sign switch for a measurement that may fall on either side of its mark. */
export function signWordsOf(id: string | undefined, locale: Locale): { positive: string; negative: string } | null {
  if (id !== 'rod-projection') return null;
  const words = measure[locale];
  return { positive: String(words.pastNut), negative: String(words.belowNut) };
}
