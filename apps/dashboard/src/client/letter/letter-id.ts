import { createContext, useContext } from 'react';

/** Of the letter on the page. Every call and everything kept on the device names it, so that two letters never mix. */
export const LetterId = createContext('');

export const useLetterId = (): string => useContext(LetterId);
