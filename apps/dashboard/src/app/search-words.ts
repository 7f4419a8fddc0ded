/** One named word of an address's query, or nothing when it is absent, empty or not a text. */
export function word<const K extends string>(search: Record<string, unknown>, name: K): { [P in K]?: string } {
  const value = search[name];
  return typeof value === 'string' && value !== '' ? ({ [name]: value } as { [P in K]?: string }) : {};
}
