import type { Rectangle } from '@underlath/contract';
import { type ElevationMark, layOutElevation } from '@underlath/rules/places';
import type { SizedDrawnPlace } from './drawn-place.ts';
import type { Frame } from './frame.ts';
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
export function ElevationGround({ place, frame }: { place: SizedDrawnPlace; frame: Frame }) {
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
  place: SizedDrawnPlace;
  frame: Frame;
  extras?: ElevationExtras;
}) {
  return (
    <Unspoken>
      <rect fill="var(--sheet)" {...frame.rect({ xIn: 0, yIn: 0, widthIn: place.widthIn, heightIn: place.heightIn })} />
      {layOutElevation(place).map((mark) => (
        <ElevationMarkDrawing
          key={`${mark.part} ${mark.rect.xIn} ${mark.rect.yIn} ${mark.rect.widthIn}`}
          mark={mark}
          frame={frame}
        />
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

const looks = { member: 'd-member', plate: 'd-plate', outline: 'd-outline' } as const;

function ElevationMarkDrawing({ mark: { part, rect }, frame }: { mark: ElevationMark; frame: Frame }) {
  if (part === 'opening') return <OpeningDrawing rect={rect} frame={frame} />;
  if (part === 'beam') return <BeamDrawing rect={rect} frame={frame} />;
  return <rect className={looks[part]} {...frame.rect(rect)} />;
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

/** A beam seen from the side, long grain along it. */
function BeamDrawing({ rect, frame }: { rect: Rectangle; frame: Frame }) {
  const box = frame.rect(rect);
  const grain = [0.28, 0.52, 0.77].map((share) => box.y + box.height * share);
  return (
    <>
      <rect className="d-wood" {...box} />
      {grain.map((y) => (
        <path
          key={y}
          className="d-grain"
          d={`M${box.x} ${y}q${box.width / 4} ${-box.height * 0.06} ${box.width / 2} 0t${box.width / 2} 0`}
        />
      ))}
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
