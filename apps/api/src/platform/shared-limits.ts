import { createHash } from 'node:crypto';
import { isIPv6 } from 'node:net';
import type pg from 'pg';
import { RateLimiterMemory, RateLimiterPostgres, RateLimiterRes } from 'rate-limiter-flexible';

/** How often something may be tried. */
export interface Allowance {
  /** Tells this count from others. */
  name: string;
  tries: number;
  seconds: number;
}

/** Counts tries for all processes together, in the database. */
export interface SharedLimits {
  /** Counts one try. Answers 0 when it is allowed, else the milliseconds until the next one. */
  take(allowance: Allowance, who: string): Promise<number>;
}

/** A count that takes longer than this is made in memory, so that a hung database slows nobody twice. */
const patienceMs = 1_000;

/** While the database is away each process counts for itself; what was asked of it is refused as away anyhow. */
export function createSharedLimits(pool: pg.Pool): SharedLimits {
  const counters = new Map<string, { shared: RateLimiterPostgres; own: RateLimiterMemory }>();
  const counterOf = ({ name, tries, seconds }: Allowance) => {
    const known = counters.get(name);
    if (known) return known;
    const options = { keyPrefix: name, points: tries, duration: seconds };
    const shared = new RateLimiterPostgres({
      ...options,
      storeClient: pool,
      tableName: 'rate_limit',
      tableCreated: true,
      // One of them clears what has run out, for all.
      clearExpiredByTimeout: counters.size === 0,
      // Who is over the limit is told so without asking the database again.
      inMemoryBlockOnConsumed: tries + 1,
    });
    const counter = { shared, own: new RateLimiterMemory(options) };
    counters.set(name, counter);
    return counter;
  };
  return {
    take: async (allowance, who) => {
      const { shared, own } = counterOf(allowance);
      const key = createHash('sha256').update(who).digest('base64url');
      try {
        return await waitOf(within(shared.consume(key), patienceMs));
      } catch {
        return waitOf(own.consume(key));
      }
    },
  };
}

/** @throws whatever is no answer of the counter */
async function waitOf(counted: Promise<unknown>): Promise<number> {
  try {
    await counted;
    return 0;
  } catch (refusal) {
    if (refusal instanceof RateLimiterRes) return Math.max(1, refusal.msBeforeNext);
    throw refusal;
  }
}

async function within<Result>(work: Promise<Result>, milliseconds: number): Promise<Result> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_done, fail) => {
    timer = setTimeout(() => fail(new Error(`no answer within ${milliseconds} ms`)), milliseconds);
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}

/** Whose address it is: a household or a host of IPv6 has 2^64 addresses, so its network counts. */
export function networkOf(ip: string): string {
  if (!isIPv6(ip)) return ip;
  const [head = '', tail] = ip.replace(/%.*$/, '').split('::');
  const before = head.split(':').filter(Boolean);
  const after = tail?.split(':').filter(Boolean) ?? [];
  // An IPv4 address written as one of IPv6 is that address.
  const last = (after.at(-1) ?? before.at(-1)) || '';
  if (last.includes('.')) return last;
  const zeros = tail === undefined ? [] : Array<string>(Math.max(0, 8 - before.length - after.length)).fill('0');
  return [...before, ...zeros, ...after]
    .slice(0, 4)
    .map((group) => Number.parseInt(group, 16).toString(16))
    .join(':');
}
