import { createContext, type ReactNode, useCallback, useContext } from 'react';
import { type DateStyle, formatDate } from './format.ts';
import { useLocale } from './locale.tsx';

const ZoneContext = createContext<string | undefined>(undefined);

/** Below it every instant is told by the clock of a site; `zone` undefined is the device's own. */
export function SiteZone({ zone, children }: { zone: string | undefined; children: ReactNode }) {
  return <ZoneContext value={zone}>{children}</ZoneContext>;
}

export const useSiteZone = (): string | undefined => useContext(ZoneContext);

/** A day or an instant in the reader's words, by the clock of the site. */
export function useDate(): (value: string, style?: DateStyle) => string {
  const { tag } = useLocale();
  const zone = useSiteZone();
  return useCallback((value, style) => formatDate(value, tag, style, zone), [tag, zone]);
}
