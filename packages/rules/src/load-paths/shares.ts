import { lossModeWords, percent, type Text, text } from '../kernel/index.ts';
import type { Link, ShareLeft } from './load-path.ts';

/** The losses of one way of failing and what they leave together; `mode` is null for a finding that names none. */
export interface ModeShare {
  readonly mode: string | null;
  readonly shares: readonly number[];
  /** Their product, 0..1. */
  readonly share: number;
}

const plain = (left: ShareLeft): { share: number; mode: string | null } =>
  typeof left === 'number' ? { share: left, mode: null } : left;

/** One entry for each mode, in the order they were given; a finding without one stands alone. */
export function modesOf(remaining: readonly ShareLeft[]): ModeShare[] {
  const alone: ModeShare[] = [];
  const shared = new Map<string, number[]>();
  for (const { share, mode } of remaining.map(plain)) {
    if (mode === null) alone.push({ mode, shares: [share], share });
    else shared.set(mode, [...(shared.get(mode) ?? []), share]);
  }
  const together = [...shared].map(([mode, shares]) => ({ mode, shares, share: multiply(shares) }));
  return [...together, ...alone];
}

/** Sorted, so that the order in which findings were made cannot change the last digit. */
const multiply = (shares: readonly number[]): number =>
  [...shares].sort((a, b) => a - b).reduce((product, share) => product * share, 1);

/** The share of its strength that may be counted; null when it was not seen or its findings do not tell. */
export function shareLeft({ state, remaining = [] }: Link): number | null {
  if (state === 'sound') return 1;
  return state === 'findings' && remaining.length > 0
    ? Math.min(...modesOf(remaining).map(({ share }) => share))
    : null;
}

/** How several losses of one link were put together; nothing where at most one of its findings took something. */
export function combinedWords({ name, state, remaining = [] }: Link): Text[] {
  if (state !== 'findings') return [];
  const lost = modesOf(remaining.filter((left) => plain(left).share < 1));
  const multiplied = lost
    .filter(({ shares }) => shares.length > 1)
    .map(({ mode, shares, share }) => {
      const kind = lossModeWords(mode ?? '');
      const working = `${shares.map(percent).join(' x ')} = ${percent(share)}`;
      return text(
        `${name}: ${working}, losses of one kind multiply (${kind.en}).`,
        `${name}: ${working}; las pérdidas de una misma clase se multiplican (${kind.es}).`,
      );
    });
  if (lost.length < 2) return multiplied;
  const list = lost.map(({ share }) => percent(share)).join(', ');
  const smallest = text(
    `${name}: of its losses of different kinds (${list}) the smallest share counts.`,
    `${name}: de sus pérdidas de distinta clase (${list}) cuenta la menor parte restante.`,
  );
  return [...multiplied, smallest];
}
