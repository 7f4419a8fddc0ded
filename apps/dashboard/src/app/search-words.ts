/** One named word of an address's query, or nothing when it is absent, empty or not a text. */
export function word<const K extends string>(search: Record<string, unknown>, name: K): { [P in K]?: string } {
  const value = search[name];
  return typeof value === 'string' && value !== '' ? ({ [name]: value } as { [P in K]?: string }) : {};
}

/** Every named word of an address's query. */
export const searchWords = (search: Record<string, unknown>): Record<string, string> =>
  Object.fromEntries(
    Object.entries(search).flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])),
  );

/** A query as it is typed: every value is a text, `?q=4` too. */
export const readSearch = (query: string): Record<string, string> => Object.fromEntries(new URLSearchParams(query));

/** The same the other way round, without what is absent. */
export function writeSearch(search: Record<string, unknown>): string {
  const query = new URLSearchParams(searchWords(search)).toString();
  return query ? `?${query}` : '';
}
