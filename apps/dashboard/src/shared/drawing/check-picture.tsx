import type { ReactNode } from 'react';
import { Hatch } from './marks.tsx';
import { IJoistEnd } from './tape/movement.tsx';
import { Flake } from './tape/paint.tsx';
import { Board, BoardEnd, Rod } from './tape/pieces.tsx';
import './drawing.css';

const lost = 'var(--ink-soft)';

/** Small pictorials for "what is it?": one condition each, the thing in question drawn thick or hatched. */
const scenes: Record<string, ReactNode> = {
  'anchor.thread-engagement': (
    <>
      <Board x={0} y={8} width={92} height={104} />
      <rect className="d-metal" x={92} y={18} width={8} height={84} />
      <rect className="d-sheet" x={100} y={28} width={40} height={64} strokeWidth={2.4} />
      <Rod x={16} y={48} length={104} thick={24} threadsFrom={66} />
      <Hatch x={120} y={48} width={20} height={24} color={lost} dashed />
      <path className="d-limit" d="M140 8v104" />
    </>
  ),
  'cut.top-plate': (
    <>
      <Board x={0} y={20} width={180} height={22} />
      <Board x={0} y={42} width={180} height={22} />
      <path className="d-member" d="M20 64h14v52h-14zM146 64h14v52h-14z" />
      <rect fill="var(--sheet)" x={68} y={19} width={46} height={36} />
      <path className="d-thick" d="M68 20v34h46v-34" />
      <rect className="d-metal" x={80} y={4} width={22} height={112} fillOpacity={0.85} />
    </>
  ),
  'bearing.seat': (
    <>
      <Board x={44} y={24} width={136} height={44} />
      <rect className="d-metal" x={8} y={68} width={50} height={48} />
      <Hatch x={44} y={62} width={14} height={6} color={lost} />
      <path className="d-thin" d="M44 74v20M58 74v20M36 88h30" />
      <path className="d-tick" d="M40 92l8 -8M54 92l8 -8" />
    </>
  ),
  'connection.hanger': (
    <>
      <Board x={0} y={14} width={180} height={98} />
      <BoardEnd x={72} y={22} width={36} height={66} />
      <path className="d-steel" d="M40 44h18v58h64v-58h18" strokeWidth={4} />
      <circle className="d-sheet" cx={49} cy={60} r={4} />
      <circle className="d-ink" cx={49} cy={80} r={4} />
      <circle className="d-sheet" cx={131} cy={60} r={4} />
      <circle className="d-ink" cx={131} cy={80} r={4} />
    </>
  ),
  'shear-wall.nail-survey': (
    <>
      <rect className="d-panel" x={6} y={8} width={80} height={106} />
      <rect className="d-panel" x={94} y={8} width={80} height={106} />
      {[18, 38, 58, 78, 98].map((y, at) => (
        <g key={y}>
          <circle className="d-ink" cx={at === 2 ? 83 : 74} cy={y} r={4} />
          {at === 1 || at === 3 ? (
            <circle className="d-thick" cx={106} cy={y} r={6} />
          ) : (
            <circle className="d-ink" cx={106} cy={y} r={4} />
          )}
        </g>
      ))}
    </>
  ),
  'movement.shrinkage': (
    <>
      <path className="d-thick" d="M0 34h76L104 22h76" />
      <BoardEnd x={24} y={36} width={30} height={74} />
      <IJoistEnd x={116} y={24} height={86} />
      <path className="d-thin" d="M0 110h180" />
    </>
  ),
  'decay.section-loss': (
    <>
      <Board x={0} y={18} width={124} height={72} />
      <BoardEnd x={124} y={18} width={50} height={72} />
      <path fill="var(--sheet)" d="M0 66q30 -8 60 4t64 -6h50v30h-174z" />
      <Hatch x={0} y={68} width={174} height={22} color={lost} dashed />
    </>
  ),
  'hazard.lead': (
    <>
      <rect className="d-wood" x={34} y={6} width={112} height={108} />
      <rect className="d-sheet" x={52} y={24} width={76} height={72} />
      <path className="d-thick" d="M90 24v72M52 60h76" />
      <Flake x={37} y={44} s={0.8} />
      <Flake x={132} y={76} s={0.8} />
      <Flake x={84} y={10} s={0.8} />
      <Flake x={100} y={104} s={0.8} />
    </>
  ),
};

/** The checks that have a picture of their own. */
export const drawnCheckIds: readonly string[] = Object.keys(scenes);

/** What the crew picks from: one condition, drawn, with its name beside it. A check without a scene gets an opened wall with a question. */
export function CheckPicture({ checkId }: { checkId: string }) {
  return (
    <svg className="drawing check-picture" viewBox="0 0 180 122" aria-hidden="true">
      {scenes[checkId] ?? (
        <>
          <path className="d-member" d="M10 14h14v94h-14zM84 14h14v94h-14zM156 14h14v94h-14z" />
          <path className="d-plate" d="M4 4h172v10h-172zM4 108h172v10h-172z" />
          <rect className="d-unseen" x={40} y={34} width={100} height={54} />
        </>
      )}
    </svg>
  );
}
