import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { findProjectRoot } from '../../apps/api/src/platform/project-root.ts';
import type { PictureName } from './scenes.ts';

export const pictureFile = (name: PictureName): string => join(findProjectRoot(), 'seed/pictures/drawn', `${name}.jpg`);

/**
 * One of the drawn pictures as a phone would write it, with device time and zone.
 * `takenAt` is local time with its offset, `2026-03-03T09:05:00-08:00`.
 */
export async function takePhoto(name: PictureName, takenAt: string): Promise<Buffer> {
  const time = takenAt.slice(0, 19).replaceAll('-', ':').replace('T', ' ');
  return sharp(await readFile(pictureFile(name)))
    .withExif({
      IFD0: { Make: 'Invented', Model: 'Drawn' },
      IFD2: { DateTimeOriginal: time, OffsetTimeOriginal: takenAt.slice(19) },
    })
    .jpeg({ quality: 84 })
    .toBuffer();
}
