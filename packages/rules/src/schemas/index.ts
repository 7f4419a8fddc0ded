export * from './values.ts';
export * from './written-words.ts';
