import type { UseQueryResult } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { FailState, LoadingRows } from '../../shared/ui/states.tsx';

type ReadingProps<T> = {
  query: Pick<UseQueryResult<T, Error>, 'data' | 'error' | 'isFetching'> & { refetch: () => unknown };
  /** What is being read, for the failing state: "Reading the photos". */
  doing: string;
  rows?: number;
  children: (data: NonNullable<T>) => ReactNode;
};

/** The three states of anything read: its lines while loading, what went wrong, or the thing. What was read once stays in sight when a later reading fails. */
export function Reading<T>({ query, doing, rows = 5, children }: ReadingProps<T>) {
  const fail = query.error && (
    <FailState
      problem={problemOf(query.error)}
      doing={doing}
      onRetry={() => query.refetch()}
      retrying={query.isFetching}
    />
  );
  if (query.data !== undefined && query.data !== null) {
    return (
      <>
        {fail}
        {children(query.data)}
      </>
    );
  }
  return fail || <LoadingRows rows={rows} />;
}
