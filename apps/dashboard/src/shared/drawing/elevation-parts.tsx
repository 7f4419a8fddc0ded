import type { Rectangle } from '@underlath/contract';
import type { Frame } from './frame.ts';
import { floorMembers, MEMBER_IN, memberEdges, type SizedPlace, wallMembers } from './framing.ts';
import { Unspoken } from './marks.tsx';

/** What may be known of a wall beyond its framing. All of it from data; what is not given is not drawn. */
export type ElevationExtras = {
  panels?: readonly (Rectangle & { unseen?: boolean })[];
  holdDowns?: readonly { xIn: number; unseen?: boolean }[];
  sillBoltsIn?: readonly number[];
  /** Not opened yet. */
  unseen?: readonly Rectangle[];
  gridLines?: readonly { name: string; xIn: number }[];
};

/** The footing under a wall; nothing under a floor. */
export function ElevationGround({ place, frame }: { place: SizedPlace; frame: Frame }) {
  if (place.kind !== 'wall') return null;
  const over = Math.min(12, 8 * frame.scale);
  return (
    <rect
      className="d-ground"
      x={frame.x(0) - over}
      y={frame.y(0)}
      width={place.widthIn * frame.scale + 2 * over}
      height={20}
    />
  );
}

export function ElevationParts({
  place,
  frame,
  extras = {},
}: {
  place: SizedPlace;
  frame: Frame;
  extras?: ElevationExtras;
}) {
  return (
    <Unspoken>
      {place.kind === 'beam-line' ? <Beam place={place} frame={frame} /> : <Framing place={place} frame={frame} />}
      {place.openings.map((opening) => (
        <OpeningDrawing key={`${opening.name}${opening.xIn}`} rect={opening} frame={frame} />
      ))}
      {extras.panels?.map((panel) => (
        <rect
          key={`${panel.xIn}-${panel.yIn}`}
          className={panel.unseen ? 'd-unseen' : 'd-panel'}
          {...frame.rect(panel)}
        />
      ))}
      {extras.unseen?.map((rect) => (
        <rect key={`${rect.xIn}-${rect.yIn}-unseen`} className="d-unseen" {...frame.rect(rect)} />
      ))}
      {extras.sillBoltsIn?.map((xIn) => (
        <line key={xIn} className="d-steel" x1={frame.x(xIn)} y1={frame.y(3)} x2={frame.x(xIn)} y2={frame.y(0) + 12} />
      ))}
      {extras.holdDowns?.map((holdDown) => (
        <HoldDown key={holdDown.xIn} {...holdDown} frame={frame} />
      ))}
      {extras.gridLines?.map((line) => (
        <GridLine key={line.name} {...line} frame={frame} />
      ))}
    </Unspoken>
  );
}

function Framing({ place, frame }: { place: SizedPlace; frame: Frame }) {
  const isWall = place.kind === 'wall';
  const members = isWall ? wallMembers(place) : floorMembers(place);
  const isPlate = (member: Rectangle) => member.widthIn > MEMBER_IN && member.heightIn === MEMBER_IN;
  return (
    <>
      <rect fill="var(--sheet)" {...frame.rect({ xIn: 0, yIn: 0, widthIn: place.widthIn, heightIn: place.heightIn })} />
      {members
        .toSorted((a, b) => Number(isPlate(a)) - Number(isPlate(b)))
        .map((member) => (
          <rect
            key={`${member.xIn}-${member.yIn}-${member.widthIn}`}
            className={isPlate(member) ? 'd-plate' : 'd-member'}
            {...frame.rect(member)}
          />
        ))}
      <rect
        className="d-outline"
        {...frame.rect({ xIn: 0, yIn: 0, widthIn: place.widthIn, heightIn: place.heightIn })}
      />
    </>
  );
}

function OpeningDrawing({ rect, frame }: { rect: Rectangle; frame: Frame }) {
  const box = frame.rect(rect);
  return (
    <>
      <rect className="d-opening" {...box} />
      <path
        className="d-opening-cross"
        d={`M${box.x} ${box.y}l${box.width} ${box.height}M${box.x + box.width} ${box.y}l${-box.width} ${box.height}`}
      />
    </>
  );
}

/** A beam seen from the side: joist ends above it where their spacing is known, long grain along it. */
function Beam({ place, frame }: { place: SizedPlace; frame: Frame }) {
  const box = frame.rect({ xIn: 0, yIn: 0, widthIn: place.widthIn, heightIn: place.heightIn });
  const grain = [0.28, 0.52, 0.77].map((share) => box.y + box.height * share);
  const joists = place.framingSpacingIn ? memberEdges(place.widthIn, place.framingSpacingIn) : [];
  return (
    <>
      {joists.map((xIn) => (
        <rect
          key={xIn}
          className="d-member"
          x={frame.x(xIn)}
          y={box.y - 12}
          width={MEMBER_IN * frame.scale}
          height={12}
        />
      ))}
      <rect className="d-wood" {...box} />
      {grain.map((y) => (
        <path
          key={y}
          className="d-grain"
          d={`M${box.x} ${y}q${box.width / 4} ${-box.height * 0.06} ${box.width / 2} 0t${box.width / 2} 0`}
        />
      ))}
      <rect className="d-outline" {...box} />
    </>
  );
}

function HoldDown({ xIn, unseen, frame }: { xIn: number; unseen?: boolean; frame: Frame }) {
  const x = frame.x(xIn);
  const s = frame.scale;
  const dash = unseen ? '5 4' : undefined;
  return (
    <>
      <path
        className="d-steel"
        strokeDasharray={dash}
        d={`M${x - 1.6 * s} ${frame.y(14)}v${12 * s}h${3.2 * s}v${-4 * s}`}
      />
      <line className="d-steel" strokeDasharray={dash} x1={x} y1={frame.y(6)} x2={x} y2={frame.y(0) + 14} />
    </>
  );
}

function GridLine({ name, xIn, frame }: { name: string; xIn: number; frame: Frame }) {
  const x = frame.x(xIn);
  return (
    <>
      <line className="d-grid" x1={x} y1={26} x2={x} y2={frame.y(0) + 20} />
      <circle className="d-sheet" cx={x} cy={13} r={12} />
      <text x={x} y={18} textAnchor="middle" fontWeight={700}>
        {name}
      </text>
    </>
  );
}
