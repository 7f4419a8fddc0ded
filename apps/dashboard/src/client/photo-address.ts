import { clientRoutes } from '@underlath/contract';
import { createContext } from 'react';
import { addressOf } from '../shared/api/call.ts';

export type PhotoAddress = (photoId: string, size: 'view' | 'thumb') => string;

/** Where the letter's photos come from: the client's own route; the office, which shows the same letter, gives its own. */
export const PhotoAddressContext = createContext<PhotoAddress>((photoId, size) =>
  addressOf(clientRoutes.clientPhoto, { params: { photoId }, query: { size } }),
);
