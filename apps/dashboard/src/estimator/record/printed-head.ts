/** Where a record stood, as letters print it: `12: 3f9a…`. Nothing typed is an empty answer, what is not whole is none. */
export function readPrinted(text: string): { seq?: number; hash?: string } | undefined {
  if (text.trim() === '') return {};
  // A printed hash may come with the line breaks or groups of the page it was copied from.
  const [, seq, hash] = /^(\d{1,9}):([0-9a-f]{64})\.?$/.exec(text.toLowerCase().replace(/\s/g, '')) ?? [];
  return seq && hash ? { seq: Number(seq), hash } : undefined;
}
