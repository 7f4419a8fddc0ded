import {
  type QueryClient,
  type UseInfiniteQueryResult,
  type UseMutationResult,
  type UseQueryResult,
  useInfiniteQuery,
  useMutation,
  useQuery,
  useQueryClient,
} from '@tanstack/react-query';
import { type Route, routes } from '@underlath/contract';
import { useRef } from 'react';
import { v7 } from 'uuid';
import { call, type Given, type Manners, type Result } from './call.ts';
import { isProblem, OfflineError, ProblemAnswer } from './errors.ts';

/** `[route name, params, query]`: `[route.name]` alone invalidates every call of a route. */
export function keyOf<R extends Route>(route: R, given: Omit<Given<R>, 'body'>): readonly unknown[] {
  const { params, query } = given as { params?: unknown; query?: unknown };
  return [route.name, params ?? {}, query ?? {}];
}

/** Only what may pass by itself is tried again: no answer, or the server busy. */
export function worthTrying(failures: number, error: Error): boolean {
  if (failures >= 2) return false;
  return error instanceof OfflineError || (error instanceof ProblemAnswer && error.status >= 502);
}

export interface ReadOptions {
  /** Asks again every so many milliseconds, while something is being made. */
  readonly everyMs?: number | false;
  readonly staleMs?: number;
}

/** Reads a route. `null` as input waits. */
export function useRoute<R extends Route>(
  route: R,
  given: Given<R> | null,
  options: ReadOptions = {},
): UseQueryResult<Result<R>, Error> {
  return useQuery({
    queryKey: given ? keyOf(route, given) : [route.name, 'waiting'],
    queryFn: ({ signal }) => call(route, { ...(given as Given<R>), signal }),
    enabled: given !== null,
    retry: worthTrying,
    networkMode: 'always',
    ...(options.everyMs === undefined ? {} : { refetchInterval: options.everyMs }),
    ...(options.staleMs === undefined ? {} : { staleTime: options.staleMs }),
  });
}

/** An answer of a list with a cursor. */
type Paged = { items: readonly unknown[]; next: string | null };
type ItemOf<R extends Route> = Result<R> extends { items: readonly (infer I)[] } ? I : never;

export type Pages<R extends Route> = UseInfiniteQueryResult<unknown, Error> & { items: ItemOf<R>[] };

/** Reads a list page by page; `items` are those of all pages read so far. */
export function usePages<R extends Route>(route: R, given: Given<R>): Pages<R> {
  const result = useInfiniteQuery({
    queryKey: [...keyOf(route, given), 'pages'],
    initialPageParam: null as string | null,
    queryFn: ({ signal, pageParam }) => {
      const { query } = given as { query?: object };
      const asked = { ...given, query: { ...query, ...(pageParam ? { cursor: pageParam } : {}) }, signal };
      return call(route, asked as unknown as Given<R> & Manners) as Promise<unknown> as Promise<Paged>;
    },
    getNextPageParam: (last) => last.next,
    retry: worthTrying,
    networkMode: 'always',
  });
  const items = (result.data?.pages ?? []).flatMap((page) => page.items as ItemOf<R>[]);
  return { ...(result as UseInfiniteQueryResult<unknown, Error>), items };
}

const allRoutes: readonly Route[] = Object.values(routes);

/** The route that reads what a PUT or PATCH of the same path answers with; a test holds them to that. */
export const readerOf = ({ method, path }: Route): Route | undefined =>
  method === 'PUT' || method === 'PATCH'
    ? allRoutes.find((one) => one.method === 'GET' && one.path === path)
    : undefined;

export type RouteChange<R extends Route> = UseMutationResult<Result<R>, Error, Given<R> & Manners>;

export interface ChangeOptions<R extends Route> {
  /** Routes whose answers are read again after a success. */
  readonly invalidates?: readonly Route[];
  readonly onDone?: (result: Result<R>, given: Given<R> & Manners, client: QueryClient) => void;
}

/**
 * Changes something. Where the contract takes an `Idempotency-Key`, the same payload keeps its key until it has
 * succeeded, so that pressing again after a broken connection does not make two.
 */
export function useChange<R extends Route>(route: R, options: ChangeOptions<R> = {}): RouteChange<R> {
  const client = useQueryClient();
  const lastKey = useRef<{ payload: string; key: string } | null>(null);
  const readAgain = () =>
    Promise.all((options.invalidates ?? []).map((each) => client.invalidateQueries({ queryKey: [each.name] })));
  return useMutation({
    networkMode: 'always',
    mutationFn: (given: Given<R> & Manners) => {
      if (!route.idempotent || given.idempotencyKey) return call(route, given);
      const payload = JSON.stringify({ ...given, signal: undefined });
      if (lastKey.current?.payload !== payload) lastKey.current = { payload, key: v7() };
      return call(route, { ...given, idempotencyKey: lastKey.current.key });
    },
    onSuccess: async (result, given) => {
      lastKey.current = null;
      const reader = readerOf(route);
      // What was answered is shown at once, so that whoever presses on carries its version.
      if (reader)
        client.setQueryData(keyOf(reader, { params: (given as { params?: unknown }).params } as Given<Route>), result);
      const again = readAgain();
      options.onDone?.(result, given, client);
      await again;
    },
    // Someone else was first: what is there now is read, so that the next press carries its version.
    onError: (error) => (isProblem(error, 'stale-version') ? readAgain() : undefined),
  });
}
