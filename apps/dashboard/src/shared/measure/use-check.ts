import { useQueries, useQuery } from '@tanstack/react-query';
import { checkEntries, findEntry } from '@underlath/rules';
import type { Check } from '@underlath/rules/kernel';

/** Checks come with the program: each is read once, when it is picked, and needs no signal after that. */
const loadOf = (id: string) => ({
  queryKey: ['check', id],
  queryFn: async (): Promise<Check | null> => (await findEntry(id)?.load()) ?? null,
  staleTime: Number.POSITIVE_INFINITY,
  gcTime: Number.POSITIVE_INFINITY,
  networkMode: 'always' as const,
});

export interface LoadedCheck {
  check: Check | undefined;
  /** `unknown` when this version of the program has no such check. */
  state: 'loading' | 'failed' | 'unknown' | 'ready';
  retry: () => void;
}

/** One check by its id. */
export function useCheck(id: string): LoadedCheck {
  const query = useQuery({ ...loadOf(id), enabled: findEntry(id) !== undefined });
  const state = !findEntry(id) ? 'unknown' : query.data ? 'ready' : query.isError ? 'failed' : 'loading';
  return { check: query.data ?? undefined, state, retry: () => void query.refetch() };
}

/** Every check there is, or undefined until the last of them is read. */
export function useAllChecks(): { checks: readonly Check[] | undefined; failed: boolean; retry: () => void } {
  return useQueries({
    queries: checkEntries.map(({ id }) => loadOf(id)),
    combine: (queries) => {
      const checks = queries.flatMap(({ data }) => data ?? []);
      return {
        checks: checks.length === queries.length ? checks : undefined,
        failed: queries.some(({ isError }) => isError),
        retry: () => {
          for (const query of queries) if (query.isError) void query.refetch();
        },
      };
    },
  });
}
