export * from './describe.ts';
export * from './evaluate.ts';
export * from './kernel/index.ts';
export * from './registry.ts';
export * from './repairs/define-repair.ts';
export * from './repairs/operations.data.ts';
export * from './repairs/registry.ts';
export * from './repairs/take-off.ts';
