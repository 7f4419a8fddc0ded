import { useQuery } from '@tanstack/react-query';
import type { Check, CheckEvidence } from '@underlath/rules';

/**
 * The worked cases of a check and the words of its values. They come with the program, so they are read once and need no
 * signal after that; undefined until then.
 */
export function useEvidence(check: Check | undefined): { evidence: CheckEvidence | undefined; failed: boolean } {
  const query = useQuery({
    queryKey: ['evidence', check?.id],
    queryFn: async () => (check ? await check.cases() : null),
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: Number.POSITIVE_INFINITY,
    networkMode: 'always',
  });
  return { evidence: query.data ?? undefined, failed: query.isError };
}
