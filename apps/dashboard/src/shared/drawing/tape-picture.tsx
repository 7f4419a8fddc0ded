import type { Locale } from '@underlath/rules/kernel';
import type { ReactNode } from 'react';
import { useT } from '../i18n/locale.tsx';
import { drawing } from '../i18n/messages/drawing.ts';
import { measure } from '../i18n/messages/measure.ts';
import { GenericTape } from './tape/generic.tsx';
import './drawing.css';

export type TapeProps = {
  /** The live answer of the field the picture belongs to; null while it is not measured. */
  value: number | null;
  /** All answers of the check so far, for what else the picture shows. */
  inputs: Readonly<Record<string, unknown>>;
  t: ReturnType<typeof useT<keyof (typeof drawing)['en']>>;
};

type Tape = { draw: (props: TapeProps) => ReactNode; signs?: 'nut' };

const tapes: Record<string, Tape> = {};

/** Where the tape goes: drawn, moving with the value. An unknown id gets a plain tape with the value on it. */
export function TapePicture({
  id,
  value,
  inputs,
}: {
  id: string;
  value: unknown;
  inputs: Readonly<Record<string, unknown>>;
}) {
  const t = useT(drawing);
  const draw = tapes[id]?.draw ?? GenericTape;
  return <figure className="tape">{draw({ value: typeof value === 'number' ? value : null, inputs, t })}</figure>;
}

/** The words of the sign switch for a measurement that may fall on either side of its mark. */
export function signWordsOf(id: string | undefined, locale: Locale): { positive: string; negative: string } | null {
  if (!id || tapes[id]?.signs !== 'nut') return null;
  const words = measure[locale];
  return { positive: String(words.pastNut), negative: String(words.belowNut) };
}
