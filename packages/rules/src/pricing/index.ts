export * from './contract.ts';
export * from './cost-book.ts';
export * from './dates.ts';
export * from './estimate.ts';
export * from './price-scope.ts';
export * from './starter-cost-book.data.ts';
