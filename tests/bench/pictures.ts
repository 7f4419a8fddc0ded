import { randomBytes } from 'node:crypto';
import sharp from 'sharp';

/** A JPEG of noise: hard to compress, like dust and wood grain. */
export async function noiseJpeg(widthPx: number, heightPx: number, quality = 80): Promise<Buffer> {
  const noise = randomBytes(Math.ceil((widthPx * heightPx) / 16) * 3);
  return sharp(noise, { raw: { width: Math.ceil(widthPx / 4), height: Math.ceil(heightPx / 4), channels: 3 } })
    .resize(widthPx, heightPx, { kernel: 'cubic' })
    .jpeg({ quality })
    .toBuffer();
}

/** The same picture with other bytes behind its end: another photo to the server, the same work. */
export const anotherCopy = (jpeg: Buffer): Buffer => Buffer.concat([jpeg, randomBytes(16)]);

/** A valid JPEG of exactly this size: padded behind the end of its picture. */
export const padded = (jpeg: Buffer, bytes: number): Buffer =>
  Buffer.concat([jpeg, randomBytes(Math.max(0, bytes - jpeg.length))]);
