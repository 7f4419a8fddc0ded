import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { type Estimate, type RangeShape, routes } from '@underlath/contract';
import { useEffect, useState } from 'react';
import { call } from '../../shared/api/call.ts';
import { worthTrying } from '../../shared/api/hooks.ts';
import type { EstimateBody } from './draft.ts';

/** Typing pauses this long before the server is asked. */
const pauseMs = 300;

function useSettled(value: string): string {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), pauseMs);
    return () => clearTimeout(timer);
  }, [value]);
  return settled;
}

/** What an estimate that is being edited comes to. While nothing can be asked, the last answer stays. */
export function useEstimatePreview(
  { findingId, findingVersion }: Estimate,
  body: EstimateBody | null,
  shape: RangeShape,
) {
  const wanted = JSON.stringify(body);
  const asked = useSettled(wanted);
  const query = useQuery({
    queryKey: [routes.previewEstimate.name, findingId, findingVersion, shape, asked],
    queryFn: ({ signal }) =>
      call(routes.previewEstimate, {
        params: { findingId },
        query: { shape },
        body: JSON.parse(asked) as EstimateBody,
        signal,
      }),
    enabled: asked !== 'null',
    placeholderData: keepPreviousData,
    retry: worthTrying,
    networkMode: 'always',
  });
  return { ...query, isBehind: wanted !== asked || query.isPlaceholderData || query.isFetching };
}
