import { type Text, text } from '@underlath/rules';
import { dictionary } from '@zxcvbn-ts/language-common';

/** The least length of a password that is the only factor; NIST SP 800-63B-4 section 3.1.1.2, from memory. */
export const minPasswordLength = 15;

/** Different keyboards write the same letter with different bytes. */
export const normalizePassword = (password: string): string => password.normalize('NFKC');

/** About 49,000 passwords that leaked often, lower case; kept by the authors of the package. */
const common: ReadonlySet<string> = new Set(dictionary['passwords-common']);
/** Not in the list, which was made before a drawing made it famous. */
const famous: ReadonlySet<string> = new Set(['correcthorsebatterystaple']);
/** Words that say nothing here, since everyone knows them. */
const everyones = ['underlath'];
/** What has to be left of a password when the person's own words are taken out of it: common practice, no source. */
const leastOfTheirOwn = 8;
/** Shorter pieces of a name or an address stand in other words too. */
const leastOwnWord = 3;

/**
 * Why a password is not taken, in words, or null when it is. Any characters are allowed.
 * @param known what anyone knows of the person: name, e-mail address, firm
 */
export function passwordFault(password: string, known: readonly string[] = []): Text | null {
  const plain = normalizePassword(password);
  const length = [...plain].length;
  if (length < minPasswordLength)
    return text(
      `has ${length} characters; use at least ${minPasswordLength}, such as four or five words`,
      `tiene ${length} caracteres; use por lo menos ${minPasswordLength}, como cuatro o cinco palabras`,
    );
  const key = plain.toLowerCase().replace(/\s+/g, '');
  if (isRun(key))
    return text(
      'only follows the keyboard or the alphabet; choose another',
      'solo sigue el teclado o el abecedario; elija otra',
    );
  if (isRepeat(key))
    return text('only repeats a short piece; choose another', 'solo repite un pedazo corto; elija otra');
  if (readings(key).some(isCommon))
    return text(
      'is one of the most common passwords, or one with something hung on; choose another',
      'es una de las contraseñas más comunes, o una con algo añadido; elija otra',
    );
  if (isOwn(key, known))
    return text(
      'is made of your name, your e-mail address, your company or this program’s name; choose another',
      'está hecha de su nombre, su correo, su empresa o el nombre de este programa; elija otra',
    );
  return null;
}

/** As it stands, and with the signs that people put in the place of letters read as letters. */
function readings(key: string): string[] {
  const asLetters = { '0': 'o', '1': 'l', '3': 'e', '4': 'a', '5': 's', '7': 't', '@': 'a', $: 's', '!': 'i' } as const;
  const read = (text: string) => text.replace(/[013457@$!]/g, (sign) => asLetters[sign as keyof typeof asLetters]);
  const core = withoutHangings(key);
  return [key, core, read(key), read(core)];
}

const isCommon = (text: string): boolean => {
  const piece = pieceOf(text);
  return common.has(text) || famous.has(text) || (piece.length >= leastOwnWord && common.has(piece));
};

/** Without the digits and signs before and behind. */
const withoutHangings = (key: string): string => key.replace(/^[^\p{L}]+|[^\p{L}]+$/gu, '');

/** The shortest piece whose repetition makes the text. */
const pieceOf = (text: string): string => /^(.+?)\1+$/su.exec(text)?.[1] ?? text;

/** A piece of up to eight characters again and again, the last one perhaps cut off. */
function isRepeat(key: string): boolean {
  for (let length = 1; length <= 8; length += 1) {
    const piece = key.slice(0, length);
    if (key.length >= 2 * length && piece.repeat(Math.ceil(key.length / length)).startsWith(key)) return true;
  }
  return false;
}

function isOwn(key: string, known: readonly string[]): boolean {
  const words = [...everyones, ...known.flatMap(wordsOf)].sort((a, b) => b.length - a.length);
  const rest = words.reduce((left, word) => left.replaceAll(word, ' '), key);
  const isTouched = rest !== key;
  return isTouched && [...rest.replace(/[^\p{L}]/gu, '')].length < leastOfTheirOwn;
}

function wordsOf(text: string): string[] {
  const lower = normalizePassword(text).toLowerCase();
  const parts = lower.split(/[^\p{L}\p{N}]+/u).filter((word) => [...word].length >= leastOwnWord);
  return [lower.replace(/\s+/g, ''), ...parts].filter((word) => word !== '');
}

const rows = ['1234567890', 'abcdefghijklmnopqrstuvwxyz', 'qwertyuiopasdfghjklzxcvbnm'];

function isRun(key: string): boolean {
  return rows.some((row) => {
    const endless = row.repeat(Math.ceil(key.length / row.length) + 1);
    return endless.includes(key) || [...endless].reverse().join('').includes(key);
  });
}
