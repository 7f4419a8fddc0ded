import { v7 } from 'uuid';

/** A new UUID version 7 (RFC 9562): unique anywhere, and increasing with time. */
export const newId = (): string => v7();
