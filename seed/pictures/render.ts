import sharp, { type OverlayOptions } from 'sharp';
import { heightPx, randomOf, widthPx } from './paint.ts';

/** A small camera in poor light: without it the drawings look like diagrams. The same grains in every run. */
function sensorNoise(): OverlayOptions {
  const random = randomOf(5);
  const input = Buffer.alloc(widthPx * heightPx * 3);
  for (let at = 0; at < input.length; at += 3) input.fill(96 + Math.floor(random() * 64), at, at + 3);
  return { input, raw: { width: widthPx, height: heightPx, channels: 3 }, blend: 'soft-light' };
}

const svgLoaders = ['VipsForeignLoadSvg'];

/**
 * Turns our own drawings into JPEG photos as a phone would write them, with device time and zone.
 * The server refuses SVG everywhere; the loader is let in for these drawings only and shut again.
 */
export async function renderPhotos(scenes: readonly { svg: string; takenAt: string }[]): Promise<Buffer[]> {
  sharp.unblock({ operation: svgLoaders });
  try {
    const noise = sensorNoise();
    return await Promise.all(scenes.map(({ svg, takenAt }) => render(svg, takenAt, noise)));
  } finally {
    sharp.block({ operation: svgLoaders });
  }
}

/** `takenAt` is local time with its offset, `2026-03-03T09:05:00-08:00`. */
function render(svg: string, takenAt: string, noise: OverlayOptions): Promise<Buffer> {
  const time = takenAt.slice(0, 19).replaceAll('-', ':').replace('T', ' ');
  const offset = takenAt.slice(19);
  return sharp(Buffer.from(svg))
    .flatten({ background: '#000' })
    .composite([noise])
    .withExif({
      IFD0: { Make: 'Invented', Model: 'Drawn' },
      IFD2: { DateTimeOriginal: time, OffsetTimeOriginal: offset },
    })
    .jpeg({ quality: 84 })
    .toBuffer();
}
