import { clientRoutes } from '@underlath/contract';
import { createContext, useContext } from 'react';
import { addressOf } from '../../shared/api/call.ts';
import { useLetterId } from './letter-id.ts';

export type PhotoAddress = (photoId: string, size: 'view' | 'thumb') => string;

/** Where the photos come from when it is not the client who reads: the office, which shows the same letter, gives its own. */
export const PhotoAddressContext = createContext<PhotoAddress | null>(null);

/** Where a photo of the letter on the screen is. */
export function usePhotoAddress(): PhotoAddress {
  const given = useContext(PhotoAddressContext);
  const letterId = useLetterId();
  return (
    given ??
    ((photoId, size) => addressOf(clientRoutes.clientPhoto, { params: { letterId, photoId }, query: { size } }))
  );
}
