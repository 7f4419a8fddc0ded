import type { Rectangle } from '@underlath/contract';
import { formatLength, SEVERITY_WORDS, type Severity, say } from '@underlath/rules/kernel';
import { sized } from '@underlath/rules/places';
import { type ReactNode, useId, useMemo, useRef } from 'react';
import { useLocale, useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import { drawingWords } from '../i18n/messages/drawing.ts';
import type { DrawnPlace, SizedDrawnPlace } from './drawn-place.ts';
import { type ElevationExtras, ElevationGround, ElevationParts } from './elevation-parts.tsx';
import { type Frame, fitFrame, type Margins } from './frame.ts';
import { placeLabels } from './labels.ts';
import { DimensionLine, HatchPattern, Leader, NumberDisc, severityInk, Unspoken, useDrawingId } from './marks.tsx';
import { useSize } from './use-size.ts';
import './drawing.css';

export type DrawnFinding = {
  id: string;
  number: number;
  title: string;
  /** One short line under the title: "rod 1/4 in short". */
  detail?: string;
  /** Null while it is not judged. */
  severity: Severity | null;
  extent: Rectangle | null;
  /** Repaired, proven or withdrawn: drawn with a thin outline and no hatch. */
  closed?: boolean;
};

type ElevationProps = {
  place: DrawnPlace;
  findings?: readonly DrawnFinding[];
  extras?: ElevationExtras;
  selectedId?: string | null;
  /** Makes every finding a button: pointer, Enter and Space. */
  onSelect?: (id: string) => void;
  /** `names` writes each finding's name with a leader where there is room; `numbers` sets discs for a list below. */
  labels?: 'auto' | 'names' | 'numbers' | 'none';
  maxHeightPx?: number;
  /** Drawn under the labels, in the same frame; for what nobody presses. */
  under?: (frame: Frame) => ReactNode;
  /** Drawn on top, in the same frame. */
  overlay?: (frame: Frame, place: SizedDrawnPlace) => ReactNode;
};

const namesFromPx = 560;

/** A wall, floor, roof or beam to scale, with its findings on it. Nothing when its size is not known. */
export function Elevation({ place, ...rest }: ElevationProps) {
  const known = sized(place);
  return known ? <SizedElevation {...rest} place={known} /> : null;
}

function SizedElevation(props: ElevationProps & { place: SizedDrawnPlace }) {
  const {
    place,
    findings = [],
    extras,
    selectedId,
    onSelect,
    labels = 'auto',
    maxHeightPx = 520,
    under,
    overlay,
  } = props;
  const svg = useRef<SVGSVGElement>(null);
  const { widthPx, textPx } = useSize(svg, { widthPx: 800, textPx: 14 });
  const named = labels === 'names' || (labels === 'auto' && widthPx >= namesFromPx);
  const frame = useMemo(
    () => fitFrame(place.widthIn, place.heightIn, widthPx, maxHeightPx, marginsFor(place, named, textPx)),
    [place, widthPx, maxHeightPx, named, textPx],
  );
  const hatch = useDrawingId();
  const drawn = findings.filter((finding) => finding.extent !== null);
  const titleId = useId();
  return (
    <figure>
      {/* biome-ignore lint/a11y/noSvgWithoutTitle: it has one, named by aria-labelledby */}
      <svg
        ref={svg}
        className="drawing"
        viewBox={`0 0 ${frame.widthPx} ${frame.heightPx}`}
        role={onSelect || overlay ? 'group' : 'img'}
        aria-labelledby={titleId}
      >
        <DrawingWords id={titleId} place={place} count={drawn.length} />
        <defs>
          {(Object.keys(severityInk) as Severity[]).map((severity) => (
            <HatchPattern key={severity} id={`${hatch}-${severity}`} color={severityInk[severity]} />
          ))}
          <HatchPattern id={`${hatch}-open`} color="var(--ink-soft)" />
        </defs>
        <ElevationGround place={place} frame={frame} />
        <ElevationParts place={place} frame={frame} {...(extras ? { extras } : {})} />
        <OverallDimensions place={place} frame={frame} textPx={textPx} />
        {drawn.map((finding) => (
          <FindingArea
            key={finding.id}
            finding={finding}
            frame={frame}
            hatch={hatch}
            selected={finding.id === selectedId}
            onSelect={onSelect}
          />
        ))}
        {under?.(frame)}
        {labels !== 'none' &&
          (named ? (
            <NameLabels findings={drawn} frame={frame} textPx={textPx} />
          ) : (
            <NumberLabels findings={drawn} frame={frame} widthIn={place.widthIn} />
          ))}
        {overlay?.(frame, place)}
      </svg>
      {drawn.length > 0 && !onSelect && <FindingList findings={drawn} />}
    </figure>
  );
}

function marginsFor(place: SizedDrawnPlace, named: boolean, textPx: number): Margins {
  const ground = place.kind === 'wall' ? 22 : 4;
  const side = named ? 56 : 14;
  // On a long, low element the height is written beside its line, not along it.
  const beside = place.heightIn * 6 < place.widthIn ? textPx * 3.4 : 0;
  return {
    top: named ? textPx * 3.4 : 16,
    bottom: ground + textPx * 2 + 18,
    left: side,
    right: (named ? 30 : 8) + textPx + 22 + beside,
  };
}

function DrawingWords({ id, place, count }: { id: string; place: SizedDrawnPlace; count: number }) {
  const t = useT(drawingWords);
  const size = `${formatLength(place.widthIn)} × ${formatLength(place.heightIn)}`;
  return (
    <>
      <title id={id}>{t('elevationOf', { name: place.name, size })}</title>
      <desc>{t('elevationFindings', { count })}</desc>
    </>
  );
}

function OverallDimensions({ place, frame, textPx }: { place: SizedDrawnPlace; frame: Frame; textPx: number }) {
  const bottom = frame.y(0) + (place.kind === 'wall' ? 22 : 4);
  return (
    <Unspoken>
      <DimensionLine
        x1={frame.x(0)}
        y1={bottom}
        x2={frame.x(place.widthIn)}
        y2={bottom}
        off={textPx + 12}
        inches={place.widthIn}
        textPx={textPx}
      />
      <DimensionLine
        x1={frame.x(place.widthIn)}
        y1={frame.y(0)}
        x2={frame.x(place.widthIn)}
        y2={frame.y(place.heightIn)}
        off={textPx + 16}
        inches={place.heightIn}
        textPx={textPx}
      />
    </Unspoken>
  );
}

type FindingAreaProps = {
  finding: DrawnFinding;
  frame: Frame;
  hatch: string;
  selected: boolean;
  onSelect?: ((id: string) => void) | undefined;
};

/** Small findings are hard to hit: the target around one is never under 32 px. */
const leastTargetPx = 32;

function FindingArea({ finding, frame, hatch, selected, onSelect }: FindingAreaProps) {
  const words = useFindingWords();
  if (!finding.extent) return null;
  const box = frame.rect(finding.extent);
  const ink = finding.severity ? severityInk[finding.severity] : 'var(--ink-soft)';
  const grow = (px: number) => ({
    x: box.x - px,
    y: box.y - px,
    width: box.width + 2 * px,
    height: box.height + 2 * px,
  });
  const target = grow(Math.max(0, (leastTargetPx - Math.min(box.width, box.height)) / 2));
  const press = onSelect
    ? {
        role: 'button',
        tabIndex: 0,
        'aria-label': words(finding),
        'aria-pressed': selected,
        onClick: () => onSelect(finding.id),
        onKeyDown: (event: React.KeyboardEvent) => {
          if (event.key !== 'Enter' && event.key !== ' ') return;
          event.preventDefault();
          onSelect(finding.id);
        },
      }
    : {};
  return (
    <g className="d-finding" {...press}>
      {onSelect && <rect {...target} fill="transparent" />}
      <rect
        className="keeps-colour"
        {...box}
        fill={finding.closed ? 'none' : `url(#${hatch}-${finding.severity ?? 'open'})`}
        stroke={ink}
        strokeWidth={finding.closed ? 1 : finding.severity === 'make-safe' ? 3 : 2}
      />
      <rect className={selected ? 'd-around d-around-on' : 'd-around'} {...grow(5)} />
    </g>
  );
}

function useFindingWords(): (finding: DrawnFinding) => string {
  const t = useT(drawingWords);
  const { locale } = useLocale();
  return (finding) => {
    const severity = finding.severity ? say(SEVERITY_WORDS[finding.severity], locale) : t('notJudged');
    const where = finding.extent
      ? t('whereOnIt', { across: formatLength(finding.extent.xIn), up: formatLength(finding.extent.yIn) })
      : '';
    return [`${finding.number}. ${finding.title}`, finding.detail, severity, where].filter(Boolean).join('. ');
  };
}

/** The same findings in words, for who can't see the drawing. */
function FindingList({ findings }: { findings: readonly DrawnFinding[] }) {
  const words = useFindingWords();
  const t = useT(commonWords);
  return (
    <figcaption className="hidden-text">
      {t('findings')}
      <ul>
        {findings.map((finding) => (
          <li key={finding.id}>{words(finding)}</li>
        ))}
      </ul>
    </figcaption>
  );
}

/** Rough width of a run of text; the face averages a little over half its size per letter. */
const textWidth = (text: string, px: number) => text.length * px * 0.54;

function NameLabels({ findings, frame, textPx }: { findings: readonly DrawnFinding[]; frame: Frame; textPx: number }) {
  const wishes = findings.flatMap((finding) =>
    finding.extent
      ? [
          {
            id: finding.id,
            target: frame.rect(finding.extent),
            width: Math.max(textWidth(finding.title, textPx * 1.06), textWidth(finding.detail ?? '', textPx)),
            height: textPx * (finding.detail ? 2.5 : 1.3),
          },
        ]
      : [],
  );
  const bounds = { x: 2, y: 2, width: frame.widthPx - 4, height: frame.y(0) - 4 };
  return (
    <Unspoken>
      {placeLabels(wishes, bounds).map((label) => {
        const finding = findings.find((candidate) => candidate.id === label.id);
        return finding ? (
          <Leader
            key={label.id}
            from={label.from}
            to={label.to}
            side={label.side}
            title={finding.title}
            detail={finding.detail}
            textPx={textPx}
          />
        ) : null;
      })}
    </Unspoken>
  );
}

type NumberLabelsProps = { findings: readonly DrawnFinding[]; frame: Frame; widthIn: number };

function NumberLabels({ findings, frame, widthIn }: NumberLabelsProps) {
  const r = 12;
  const wishes = findings.flatMap((finding) =>
    finding.extent ? [{ id: finding.id, target: frame.rect(finding.extent), width: 2 * r, height: 2 * r }] : [],
  );
  // Past the right end stands the height, below the ground the length: a disc covers neither.
  const bounds = { x: 0, y: 0, width: frame.x(widthIn) + r, height: frame.y(0) + r };
  return placeLabels(wishes, bounds).map((label) => {
    const number = findings.find((finding) => finding.id === label.id)?.number ?? 0;
    const center = { x: label.box.x + r, y: label.box.y + r };
    return (
      <Unspoken key={label.id} className="d-leader">
        <polyline points={`${label.from.x},${label.from.y} ${center.x},${center.y}`} />
        <NumberDisc x={center.x} y={center.y} number={number} r={r} />
      </Unspoken>
    );
  });
}
