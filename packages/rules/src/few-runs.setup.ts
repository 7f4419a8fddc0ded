import fc from 'fast-check';

/** A mutant is tried thousands of times over; what 25 inputs do not show is left to the worked cases. */
fc.configureGlobal({ numRuns: 25 });
