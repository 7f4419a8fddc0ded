import type { Check } from './kernel/index.ts';

/** Every check of the package. Adding one is a file, its cases and a line here. */
export const checks: readonly Check[] = [];
