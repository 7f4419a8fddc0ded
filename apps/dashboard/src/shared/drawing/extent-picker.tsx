import type { Rectangle } from '@underlath/contract';
import { formatLength } from '@underlath/rules/kernel';
import { sized } from '@underlath/rules/places';
import { type PointerEvent, useRef, useState } from 'react';
import { useT } from '../i18n/locale.tsx';
import { drawingWords } from '../i18n/messages/drawing.ts';
import { Button } from '../ui/button.tsx';
import type { DrawnPlace, SizedDrawnPlace } from './drawn-place.ts';
import { type DrawnFinding, Elevation } from './elevation.tsx';
import { type Frame, keepOn, rectangleFromCorners } from './frame.ts';

type ExtentPickerProps = {
  place: DrawnPlace;
  value: Rectangle | null;
  onChange: (value: Rectangle | null) => void;
  /** Already recorded here, drawn for orientation. */
  others?: readonly DrawnFinding[];
  maxHeightPx?: number;
};

/** A tap marks this much around it, to be made larger or smaller with the buttons. */
const firstSizeIn = 12;
const stepIn = 4;
/** Less than this is a tap, not a drag: a glove never lifts exactly where it landed. */
const dragFromPx = 10;

/** Marks where on the wall: a tap and buttons, or a drag. The buttons do everything a finger does. */
export function ExtentPicker({ place, value, onChange, others = [], maxHeightPx = 340 }: ExtentPickerProps) {
  const known = sized(place);
  const t = useT(drawingWords);
  if (!known) return null;
  return (
    <div className="extent-picker">
      <p className="soft">{t('markHint')}</p>
      <Elevation
        place={place}
        findings={others}
        labels="none"
        maxHeightPx={maxHeightPx}
        overlay={(frame) => <Touch frame={frame} place={known} value={value} onChange={onChange} />}
      />
      <p className="extent-words" role="status">
        {value
          ? t('extentIs', {
              size: `${formatLength(value.widthIn)} × ${formatLength(value.heightIn)}`,
              across: formatLength(value.xIn),
              up: formatLength(value.yIn),
            })
          : t('noExtent')}
      </p>
      <Nudges place={known} value={value} onChange={onChange} />
    </div>
  );
}

type TouchProps = {
  frame: Frame;
  place: SizedDrawnPlace;
  value: Rectangle | null;
  onChange: (value: Rectangle) => void;
};

function Touch({ frame, place, value, onChange }: TouchProps) {
  const start = useRef<{ x: number; y: number } | null>(null);
  const [drawn, setDrawn] = useState<Rectangle | null>(null);
  const at = (event: PointerEvent<SVGRectElement>) => {
    const box = event.currentTarget.ownerSVGElement?.getBoundingClientRect();
    return { x: event.clientX - (box?.x ?? 0), y: event.clientY - (box?.y ?? 0) };
  };
  const between = (a: { x: number; y: number }, b: { x: number; y: number }) =>
    rectangleFromCorners(frame.toIn(a.x, a.y), frame.toIn(b.x, b.y), place.widthIn, place.heightIn);
  const around = (p: { x: number; y: number }) => {
    const center = frame.toIn(p.x, p.y);
    const half = firstSizeIn / 2;
    return keepOn(
      { xIn: center.xIn - half, yIn: center.yIn - half, widthIn: firstSizeIn, heightIn: firstSizeIn },
      place.widthIn,
      place.heightIn,
    );
  };
  const shown = drawn ?? value;
  return (
    <>
      {shown && <rect className="d-mine" {...frame.rect(shown)} />}
      <rect
        className="d-touch"
        x={0}
        y={0}
        width={frame.widthPx}
        height={frame.heightPx}
        fill="transparent"
        onPointerDown={(event) => {
          start.current = at(event);
          event.currentTarget.setPointerCapture(event.pointerId);
        }}
        onPointerMove={(event) => {
          if (!start.current) return;
          const now = at(event);
          const far = Math.hypot(now.x - start.current.x, now.y - start.current.y) >= dragFromPx;
          if (far) setDrawn(between(start.current, now));
        }}
        onPointerUp={(event) => {
          if (start.current) onChange(drawn ?? around(at(event)));
          start.current = null;
          setDrawn(null);
        }}
        onPointerCancel={() => {
          start.current = null;
          setDrawn(null);
        }}
      />
    </>
  );
}

function Nudges({
  place,
  value,
  onChange,
}: {
  place: SizedDrawnPlace;
  value: Rectangle | null;
  onChange: (value: Rectangle | null) => void;
}) {
  const t = useT(drawingWords);
  const nudge = (change: Partial<Record<keyof Rectangle, number>>) => {
    const base = value ?? {
      xIn: (place.widthIn - firstSizeIn) / 2,
      yIn: (place.heightIn - firstSizeIn) / 2,
      widthIn: firstSizeIn,
      heightIn: firstSizeIn,
    };
    const next = { ...base };
    for (const key of Object.keys(change) as (keyof Rectangle)[]) next[key] += change[key] ?? 0;
    onChange(
      keepOn(
        { ...next, widthIn: Math.max(2, next.widthIn), heightIn: Math.max(2, next.heightIn) },
        place.widthIn,
        place.heightIn,
      ),
    );
  };
  return (
    <div className="nudges">
      <Button onClick={() => nudge({ xIn: -stepIn })}>{t('moveLeft')}</Button>
      <Button onClick={() => nudge({ xIn: stepIn })}>{t('moveRight')}</Button>
      <Button onClick={() => nudge({ yIn: stepIn })}>{t('moveUp')}</Button>
      <Button onClick={() => nudge({ yIn: -stepIn })}>{t('moveDown')}</Button>
      <Button onClick={() => nudge({ widthIn: stepIn, xIn: -stepIn / 2 })}>{t('wider')}</Button>
      <Button onClick={() => nudge({ widthIn: -stepIn, xIn: stepIn / 2 })}>{t('narrower')}</Button>
      <Button onClick={() => nudge({ heightIn: stepIn, yIn: -stepIn / 2 })}>{t('taller')}</Button>
      <Button onClick={() => nudge({ heightIn: -stepIn, yIn: stepIn / 2 })}>{t('shorter')}</Button>
    </div>
  );
}
