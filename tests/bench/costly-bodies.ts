import { evaluateLoadPath, LINK_ROLES, LOAD_PATH_KINDS, type LoadPath, toAnswer } from '@underlath/rules';
import { checks, evaluateCheck } from '@underlath/rules/all-checks';
import { type Draw, fullInputs, lengthened } from './full-inputs.ts';

interface Found {
  ms: number;
  bytes: number;
  tried: number;
}
interface Search {
  name: string;
  search: (seconds: number) => Found;
}

/** A draw that comes out the same in every run. */
function openDraw(): Draw {
  let state = 1;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** One search for each check, and one for load paths. */
export async function searches(): Promise<Search[]> {
  const ofChecks = checks.map(async ({ id, inputs, cases, hardest }): Promise<Search> => {
    const known = (await cases()).cases.map((one) => one.inputs as Record<string, unknown>);
    const open = new Set(hardest.map(({ name }) => name));
    const draw = openDraw();
    const make = (turn: number) => {
      const case_ = known[turn % known.length] ?? {};
      const body = turn % 3 === 0 ? fullInputs(inputs, draw) : lengthened(case_, inputs, draw);
      // What is left open is tried with every answer.
      return turn % 2 ? Object.fromEntries(Object.entries(body).filter(([name]) => !open.has(name))) : body;
    };
    return {
      name: id,
      search: (seconds) =>
        costliest(seconds, make, (body) => toAnswer(evaluateCheck(id, { inputs: body }).toJSON(), 'es')),
    };
  });
  const draw = openDraw();
  const loadPaths = {
    name: 'load paths',
    search: (seconds: number) => costliest(seconds, () => anyPath(draw), evaluateLoadPath),
  };
  return [...(await Promise.all(ofChecks)), loadPaths];
}

/** Tries bodies for some seconds; each is taken by the quicker of two turns, since the first may be one nobody compiled yet. */
function costliest<B>(seconds: number, make: (turn: number) => B, answer: (body: B) => unknown): Found {
  const found = { ms: 0, bytes: 0, tried: 0 };
  const end = performance.now() + seconds * 1000;
  while (performance.now() < end) {
    const sent = JSON.stringify(make(found.tried));
    let ms = cpuOf(sent, answer);
    // Only what seems costlier is looked at again: another program may have had the core.
    for (let again = 0; again < 4 && ms / pieces(sent) > found.ms; again++) ms = Math.min(ms, cpuOf(sent, answer));
    found.tried += 1;
    if (found.tried > 5 && ms / pieces(sent) > found.ms)
      Object.assign(found, { ms: ms / pieces(sent), bytes: sent.length });
  }
  return found;
}

const pieces = (sent: string) => Math.max(1, sent.length / 100_000);

function cpuOf<B>(sent: string, answer: (body: B) => unknown): number {
  const before = performance.now();
  try {
    JSON.stringify(answer(JSON.parse(sent)));
  } catch (error) {
    // A refusal costs time as well.
    if (!(error instanceof Error) || !('issues' in error)) throw error;
  }
  return performance.now() - before;
}

const many = <T>(count: number, make: (at: number) => T): T[] => Array.from({ length: count }, (_, at) => make(at));

/** A path as large as one may be, or smaller, of links in any state. */
function anyPath(draw: Draw): LoadPath {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(draw() * from.length)] as T;
  const kind = pick(LOAD_PATH_KINDS);
  const long = draw() < 0.5 ? 60 : 3;
  const link = (at: number) => ({
    name: `${at}`.padEnd(long, 'x'),
    role: pick(LINK_ROLES[kind]),
    state: pick(['unseen', 'sound', 'findings'] as const),
    ...(draw() < 0.5 && { intendedLb: Math.round(draw() * 5000) }),
    ...(draw() < 0.5 && {
      remaining: many(Math.floor(draw() * 3), () => ({ share: draw(), mode: pick(['rod', 'panel-nails']) })),
    }),
    ...(draw() < 0.3 && { tensionLb: 3000, leverFt: 4, momentAboveFtLb: 100 }),
  });
  const [segments, links] = [pick([1, 60]), pick([1, 60])];
  const path = {
    kind,
    storiesAbove: pick([0, 4]),
    demandLb: 1000,
    segments: many(segments, (at) => ({
      name: `${at}`.padEnd(long, 'x'),
      lengthFt: 8,
      heightFt: 8,
      links: many(links, link),
    })),
  };
  return path as LoadPath;
}
