/** PostgreSQL keeps neither the letter NUL nor half a surrogate pair; both come from broken programs only. */
export const isStorable = (text: string): boolean => !text.includes('\0') && !halfPair.test(text);

/** In a Unicode pattern whole pairs are one letter, so this finds halves only. */
const halfPair = /\p{Surrogate}/u;
