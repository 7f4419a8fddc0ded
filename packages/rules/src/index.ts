export * from './describe.ts';
export * from './evaluate.ts';
export * from './kernel/index.ts';
export * from './registry.ts';
