type Refused = { detail: string; words?: string | undefined };

/** What is wrong with one answer, as a person reads it: the rules' own words where they have some. */
export const fieldWords = ({ words, detail }: Refused): string => words ?? plainWords(detail);

/**
 * A detail written for callers of the API, without the name of the field before it and without "got … allowed …":
 * `count: got 7; allowed is at most 5.` is read as `Has to be at most 5; it was 7.`
 */
export function plainWords(detail: string): string {
  const said = detail
    .replace(/^[a-z][\w.]*: /, '')
    .replace(/\b(?:got|came as) (.+?); allowed (?:is|are) (.+?)(\.?)$/, 'has to be $2; it was $1$3')
    .replace(/^got /, 'it was ');
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}`;
}
