export * from './states.ts';
export * from './values.ts';
export * from './written-words.ts';
