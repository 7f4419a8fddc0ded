type Kebab<S extends string> = S extends `${infer Head}${infer Tail}`
  ? Head extends Lowercase<Head>
    ? `${Head}${Kebab<Tail>}`
    : `-${Lowercase<Head>}${Kebab<Tail>}`
  : S;
type Camel<S extends string> = S extends `${infer Head}-${infer Tail}` ? `${Head}${Capitalize<Camel<Tail>>}` : S;

/** The word of the contract for a value of the database client: `makeSafe` is `make-safe`. */
export const toWord = <S extends string>(value: S): Kebab<S> =>
  value.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`) as Kebab<S>;

/** The other way round. */
export const toEnum = <S extends string>(word: S): Camel<S> =>
  word.replace(/-([a-z])/g, (_all, letter: string) => letter.toUpperCase()) as Camel<S>;
