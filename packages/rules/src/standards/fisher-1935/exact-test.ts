import type { Source } from '../../kernel/index.ts';
import { hypergeometricTail } from '../astm-e2334/finite-lot.ts';

export const EXACT_TEST_SOURCE: Source = {
  id: 'fisher-1935',
  title: 'Fisher, The Design of Experiments, exact test',
  edition: '1935, as quoted',
  section: 'eight cups, chance 1 in 70',
  basis: 'second-hand',
};

/** A chance up to this is taken as no luck, 0..1. */
export const UNLIKELY = 0.05;

/** Chance 0..1 that a group of `count` gets at most `having` when `allHaving` of `all` are dealt out by luck. */
export const byLuck = (having: number, count: number, allHaving: number, all: number): number =>
  hypergeometricTail(having, all, allHaving, count);
