import type { Rectangle, StoredLoadPath } from '@underlath/contract';
import { LINK_ROLE_WORDS, USUAL_LINKS } from '@underlath/rules';
import { useId } from 'react';
import type { Frame } from './frame.ts';
import { severityInk, Unspoken } from './marks.tsx';
import './chain.css';

type Path = StoredLoadPath;
type Severity = Path['answer']['severity'];
type LinkWorth = Path['answer']['segments'][number]['links'][number];

/** How a link is drawn: dashed while unseen, thin when sound, thick when it has lost something. */
const lineOf = ({ state, remaining, unmeasured }: LinkWorth): string =>
  state === 'unseen' ? 'chain-unseen' : unmeasured || (remaining ?? 0) < 1 ? 'chain-lost' : 'chain-sound';

interface Drawn {
  key: string;
  at: Rectangle;
  worth: LinkWorth;
  governs: boolean;
}

function drawnLinks({ segments, answer }: Path): Drawn[] {
  return segments.flatMap((segment, at) => {
    const worth = answer.segments[at];
    return segment.links.flatMap((link, part): Drawn[] => {
      const one = worth?.links[part];
      if (!one || !link.at) return [];
      return [{ key: `${at} ${part}`, at: link.at, worth: one, governs: worth.governing === link.name }];
    });
  });
}

/** The links of a line on the wall's own elevation; the one that governs stands out by word, weight and color. */
export function ChainOnWall({ path, frame, textPx = 14 }: { path: Path; frame: Frame; textPx?: number }) {
  const ink = severityInk[path.answer.severity];
  return (
    <Unspoken>
      {drawnLinks(path).map(({ key, at, worth, governs }) => {
        const box = frame.rect(at);
        // A short link low on the wall has its word beside it, where no leader runs; others above them.
        const left = at.xIn < 24;
        const beside = at.widthIn < 24 && at.yIn < 24;
        const word = beside
          ? { x: left ? box.x + box.width + 5 : box.x - 5, y: box.y + box.height - 4, end: !left }
          : { x: left ? box.x + 3 : box.x + box.width - 3, y: Math.max(textPx, box.y - 5), end: !left };
        return (
          <g key={key}>
            <rect className={lineOf(worth)} {...box} {...(governs && { style: { stroke: ink, strokeWidth: 3.4 } })} />
            {governs && (
              <text
                className="d-halo"
                x={word.x}
                y={word.y}
                textAnchor={word.end ? 'end' : 'start'}
                fontSize={textPx}
                fontWeight={800}
              >
                weakest
              </text>
            )}
          </g>
        );
      })}
    </Unspoken>
  );
}

const rowPx = 64;
const widthPx = 320;

/** A sign for each kind of link, drawn in a box 120 wide and 40 high. */
const SIGNS: Partial<Record<LinkWorth['role'], string>> = {
  member: 'M0 6h120v14h-120zM14 20v14M44 20v14M74 20v14M104 20v14',
  hanger: 'M30 0v30h60v-30M30 30l-8 6M90 30l8 6',
  seat: 'M0 4h120v12h-120zM36 16h48v18h-48z',
  beam: 'M0 8h120v22h-120zM0 15h120M0 23h120',
  post: 'M50 0h20v40h-20z',
  footing: 'M20 8h80v24h-80zM20 32l10 6M40 32l10 6M60 32l10 6M80 32l10 6',
  'top-plate': 'M0 8h120v8h-120zM0 16h120v8h-120z',
  panels: 'M20 0h80v40h-80zM60 0v40',
  posts: 'M30 0h14v40h-14zM76 0h14v40h-14z',
  'hold-down': 'M50 0v30h20v-14h-20M60 30v10',
  'sill-bolts': 'M0 12h120v10h-120zM24 4v34M60 4v34M96 4v34',
};

type ChainColumnProps = { path: Path; segmentAt: number; title: string };

/** A line that stands on no elevation: its links one under the other, as the load runs down. */
export function ChainColumn({ path, segmentAt, title }: ChainColumnProps) {
  const id = useId();
  const segment = path.answer.segments[segmentAt];
  if (!segment) return null;
  const ink = severityInk[path.answer.severity];
  const missing = notListedLinks(path.kind, segment.notListed);
  const rows = segment.links.length + missing.length;
  const heightPx = rows * rowPx + 12;
  return (
    <svg className="drawing chain-column" viewBox={`0 0 ${widthPx} ${heightPx}`} role="img" aria-labelledby={id}>
      <title id={id}>{title}</title>
      {segment.links.map((link, at) => {
        const governs = segment.governing === link.name;
        return (
          <g key={link.name} transform={`translate(0 ${at * rowPx + 10})`}>
            <path
              className={`${lineOf(link)} chain-sign`}
              d={SIGNS[link.role] ?? ''}
              {...(governs && { style: { stroke: ink, strokeWidth: 3.4 } })}
            />
            {at < rows - 1 && <path className="chain-load" d="M60 44v10m-4 -4l4 5l4 -5" />}
            <text x={136} y={18} fontSize={14} fontWeight={governs ? 800 : 600}>
              {link.name}
            </text>
            <text x={136} y={36} fontSize={14}>
              {countedWords(link)}
              {governs ? ', weakest' : ''}
            </text>
          </g>
        );
      })}
      {missing.map(({ role, words }, at) => (
        <g key={role} transform={`translate(0 ${(segment.links.length + at) * rowPx + 10})`}>
          <path className="chain-unseen chain-sign" d={SIGNS[role] ?? ''} />
          <text x={136} y={18} fontSize={14} fontWeight={600}>
            {words}
          </text>
          <text x={136} y={36} fontSize={14}>
            not listed, not seen
          </text>
        </g>
      ))}
    </svg>
  );
}

/** The usual links that a segment does not list, each once: a hanger or a seat is one of them. */
export const notListedLinks = (kind: Path['kind'], notListed: readonly LinkWorth['role'][]) =>
  USUAL_LINKS[kind].flatMap(({ roles }) => {
    const [role] = roles;
    if (!role || !notListed.includes(role)) return [];
    return [{ role, words: roles.map((one) => LINK_ROLE_WORDS[one].en).join(' or ') }];
  });

/** What may be counted of a link, in words; never color alone. */
export function countedWords({ state, remaining, unmeasured, momentOpen, usedUp }: LinkWorth): string {
  if (usedUp) return 'used up by what stands above';
  if (momentOpen && state === 'sound') return 'seen sound; not charged with what stands above';
  if (state === 'unseen') return 'not seen';
  if (remaining === null) return 'seen, not measured';
  const share = `${Math.round(remaining * 100)}%`;
  if (state === 'sound') return 'seen sound';
  return unmeasured || momentOpen ? `at most ${share}` : `${share} left`;
}

/** Which severity a link is shown in: only the one that governs carries the line's. */
export const linkInk = (governs: boolean, severity: Severity): string | undefined =>
  governs ? severityInk[severity] : undefined;
