import { problemOf } from '../../shared/api/errors.ts';
import { Button } from '../../shared/ui/button.tsx';
import { FailState } from '../../shared/ui/states.tsx';

type MoreRowsProps = {
  pages: {
    items: readonly unknown[];
    hasNextPage: boolean;
    isFetchingNextPage: boolean;
    isFetchNextPageError: boolean;
    error: Error | null;
    fetchNextPage: () => unknown;
  };
  /** What the rows are: "findings". */
  what: string;
};

/** The foot of a list that is read page by page. */
export function MoreRows({ pages, what }: MoreRowsProps) {
  if (pages.isFetchNextPageError && pages.error) {
    return (
      <FailState
        problem={problemOf(pages.error)}
        doing={`Reading more ${what}`}
        onRetry={() => pages.fetchNextPage()}
        retrying={pages.isFetchingNextPage}
      />
    );
  }
  if (!pages.hasNextPage) return null;
  return (
    <p className="more-rows">
      <Button busy={pages.isFetchingNextPage} busyLabel="Reading more…" onClick={() => pages.fetchNextPage()}>
        Show more {what}
      </Button>
      <span className="soft">{pages.items.length} shown</span>
    </p>
  );
}
