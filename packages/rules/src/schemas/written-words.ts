/** Control and bidi marks turn, hide or break what stands beside them. */
export const hasNoMarks = (line: string): boolean => !/[\p{Cc}\p{Co}\p{Bidi_Control}\u2028\u2029]/u.test(line);

/** Signs drawn as nothing make two names look alike; the joiners of some scripts are needed, and stay. */
const hidesSign = (line: string): boolean => /(?!\u200c|\u200d)\p{Default_Ignorable_Code_Point}/u.test(line);

/** The same of several lines, which new lines and tabs may part. */
export const hasOnlyBreaks = (lines: string): boolean => hasNoMarks(lines.replace(/[\r\n\t]/g, ' '));

/** Some letters and digits are drawn as nothing; they don't count. */
export const showsLetter = (line: string): boolean => /(?!\p{Default_Ignorable_Code_Point})\p{L}/u.test(line);
export const showsLetterOrDigit = (line: string): boolean =>
  /(?!\p{Default_Ignorable_Code_Point})[\p{L}\p{N}]/u.test(line);

/** What a person can be called: one line with a letter in it. */
export const isPersonName = (name: string): boolean => hasNoMarks(name) && !hidesSign(name) && showsLetter(name);

/** Letters and digits alone, without accents, case, or signs that are drawn as nothing. */
const bare = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/[\p{M}\p{Default_Ignorable_Code_Point}]/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
    .toLowerCase();

/** True for two spellings of one name: case, accents, hyphens, points and spaces apart. */
export const isSameName = (one: string, other: string): boolean => bare(one) === bare(other);
