import type { Severity } from '@underlath/rules/kernel';
import { type ElevationMark, layOutElevation, sized } from '@underlath/rules/places';
import type { DrawnPlace, SizedDrawnPlace } from './drawn-place.ts';
import { type Frame, fitFrame } from './frame.ts';
import { severityInk } from './marks.tsx';
import './drawing.css';

type PlaceThumbProps = { place: DrawnPlace; worst?: Severity | null };

const box = { width: 72, height: 46 };

/** A place the size of a stamp, to scale among its like: for lists. Its name stands beside it. */
export function PlaceThumb({ place, worst }: PlaceThumbProps) {
  const known = sized(place);
  const edge = worst ? severityInk[worst] : 'var(--ink)';
  return (
    <svg className="place-thumb keeps-colour" viewBox={`0 0 ${box.width} ${box.height}`} aria-hidden="true">
      {known ? <ThumbFraming place={known} edge={edge} heavy={Boolean(worst)} /> : <Rooms edge={edge} />}
    </svg>
  );
}

function ThumbFraming({ place, edge, heavy }: { place: SizedDrawnPlace; edge: string; heavy: boolean }) {
  const frame = fitFrame(place.widthIn, place.heightIn, box.width, box.height, {
    top: 3,
    right: 3,
    bottom: 3,
    left: 3,
  });
  return (
    <>
      {partsOf(place).map(({ part, rect }) => (
        <ThumbPart key={`${part} ${rect.xIn} ${rect.yIn} ${rect.widthIn}`} part={part} rect={rect} frame={frame} />
      ))}
      <rect
        fill="none"
        stroke={edge}
        strokeWidth={heavy ? 3 : 1.4}
        {...frame.rect({ xIn: 0, yIn: 0, widthIn: place.widthIn, heightIn: place.heightIn })}
      />
    </>
  );
}

/** Joist ends above a beam have no room here. */
const partsOf = (place: SizedDrawnPlace): ElevationMark[] =>
  layOutElevation(place).filter(({ rect }) => rect.yIn < place.heightIn);

/** At this size a stud is as wide as a hair at least, and the outline is drawn last. */
function ThumbPart({ part, rect, frame }: ElevationMark & { frame: Frame }) {
  if (part === 'opening') return <rect className="d-opening" strokeWidth={0.8} {...frame.rect(rect)} />;
  if (part === 'beam') return <rect fill="var(--wood)" {...frame.rect(rect)} />;
  if (part === 'outline') return null;
  const widthIn = Math.max(rect.widthIn, 1 / frame.scale);
  return <rect fill="var(--wood-line)" {...frame.rect({ ...rect, widthIn })} />;
}

/** A story or room has no elevation of its own: a plain plan. */
function Rooms({ edge }: { edge: string }) {
  return (
    <>
      <rect x={8} y={5} width={56} height={36} fill="none" stroke={edge} strokeWidth={2} />
      <path d="M36 5v14M36 29v12M36 24h28" stroke={edge} strokeWidth={1.2} fill="none" />
    </>
  );
}
