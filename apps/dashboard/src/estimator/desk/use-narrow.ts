import { useSyncExternalStore } from 'react';

/** Where a grid no longer can be read and a list stands in for it. */
const query = '(max-width: 48rem)';

const subscribe = (changed: () => void) => {
  const list = matchMedia(query);
  list.addEventListener('change', changed);
  return () => list.removeEventListener('change', changed);
};

/** Whether the window is as narrow as a phone's. */
export const useNarrow = (): boolean => useSyncExternalStore(subscribe, () => matchMedia(query).matches);
