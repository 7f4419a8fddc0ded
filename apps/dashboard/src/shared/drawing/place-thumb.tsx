import type { Severity } from '@underlath/rules/kernel';
import { fitFrame } from './frame.ts';
import { type DrawnPlace, floorMembers, sized, wallMembers } from './framing.ts';
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

function ThumbFraming({
  place,
  edge,
  heavy,
}: {
  place: NonNullable<ReturnType<typeof sized>>;
  edge: string;
  heavy: boolean;
}) {
  const frame = fitFrame(place.widthIn, place.heightIn, box.width, box.height, {
    top: 3,
    right: 3,
    bottom: 3,
    left: 3,
  });
  const members = place.kind === 'wall' ? wallMembers(place) : place.kind === 'beam-line' ? [] : floorMembers(place);
  return (
    <>
      {place.kind === 'beam-line' && (
        <rect
          fill="var(--wood)"
          {...frame.rect({ xIn: 0, yIn: 0, widthIn: place.widthIn, heightIn: place.heightIn })}
        />
      )}
      {members.map((member) => (
        <rect
          key={`${member.xIn}-${member.yIn}-${member.widthIn}`}
          fill="var(--wood-line)"
          {...frame.rect({ ...member, widthIn: Math.max(member.widthIn, 1 / frame.scale) })}
        />
      ))}
      {place.openings.map((opening) => (
        <rect key={`${opening.name}${opening.xIn}`} className="d-opening" strokeWidth={0.8} {...frame.rect(opening)} />
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

/** A story or room has no elevation of its own: a plain plan. */
function Rooms({ edge }: { edge: string }) {
  return (
    <>
      <rect x={8} y={5} width={56} height={36} fill="none" stroke={edge} strokeWidth={2} />
      <path d="M36 5v14M36 29v12M36 24h28" stroke={edge} strokeWidth={1.2} fill="none" />
    </>
  );
}
