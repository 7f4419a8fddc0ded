export * from './change-order-document.ts';
export * from './document-part.ts';
export * from './document-words.ts';
export * from './draft.ts';
export * from './estimate-content.ts';
export * from './letter-sections.ts';
export * from './priced-scope.ts';
export * from './trade-words.data.ts';
