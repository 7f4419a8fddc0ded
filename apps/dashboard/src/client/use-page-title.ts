import { useEffect } from 'react';

/** What the tab, the history and a screen reader call the page. */
export function usePageTitle(title: string): void {
  useEffect(() => {
    document.title = title;
  }, [title]);
}
