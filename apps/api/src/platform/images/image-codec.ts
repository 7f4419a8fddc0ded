import { readFile } from 'node:fs/promises';
import { Worker } from 'node:worker_threads';
import { photoCaps } from '@underlath/contract';
import exifr from 'exifr';
import { fileTypeFromFile } from 'file-type';
import sharp, { type Metadata, type Sharp } from 'sharp';
import { ProblemError } from '../problem-error.ts';

// The library reads SVG, TIFF, PDF and more; only what a camera writes is let in.
sharp.block({ operation: ['VipsForeignLoad'] });
sharp.unblock({
  operation: ['VipsForeignLoadJpeg', 'VipsForeignLoadPng', 'VipsForeignLoadWebp', 'VipsForeignLoadHeif'],
});
// Photos differ, so cached operations are never met again; without the cache memory stays flat.
sharp.cache(false);

const mediaTypes = ['image/jpeg', 'image/png', 'image/webp', 'image/heic'] as const;
export type PhotoMediaType = (typeof mediaTypes)[number];

export interface PhotoFacts {
  mediaType: PhotoMediaType;
  /** Size as shown upright, pixels. */
  widthPx: number;
  heightPx: number;
  /** EXIF orientation, 1 to 8; 1 when the file does not say. */
  orientation: number;
  /** What the camera's clock said, `2026-03-03T14:05:09`, or null. */
  deviceTime: string | null;
  /** The camera's offset from UTC, `+HH:MM`, or null: zone unknown. */
  deviceOffset: string | null;
  /** The file says where it was taken. The position itself is not read. */
  hasGps: boolean;
}

/** Re-encoded JPEGs with no metadata. */
export interface Derivatives {
  /** At most 1,600 px a side. */
  view: Buffer;
  /** At most 320 px a side. */
  thumb: Buffer;
}

/** A photo that cannot be shown; the message says why, in words for a person. */
export class ImageDamagedError extends Error {
  override readonly name = 'ImageDamagedError';
}

const viewSidePx = 1600;
const thumbSidePx = 320;

/**
 * Reads type, size and camera facts from the bytes, before anything is decoded.
 * @throws ProblemError `too-large` or `unsupported-media`, saying what came and what is allowed
 */
export async function inspectPhoto(path: string, byteCount: number): Promise<PhotoFacts> {
  if (byteCount > photoCaps.bytes) {
    throw tooLarge(`The photo is ${megabytes(byteCount)} MB; up to ${megabytes(photoCaps.bytes)} MB are taken.`);
  }
  const mediaType = await readMediaType(path);
  const header = await readHeader(path);
  if (mediaType === 'image/heic' && header.compression !== 'hevc') throw unsupported('an AVIF picture');
  if ((header.pages ?? 1) > 1) throw unsupported(`a picture with ${header.pages} frames`);
  const { width: widthPx, height: heightPx } = header.autoOrient;
  if (Math.max(widthPx, heightPx) > photoCaps.sidePx || widthPx * heightPx > photoCaps.pixels) {
    throw tooLarge(
      `The photo is ${widthPx} x ${heightPx} pixels; up to ${photoCaps.sidePx} a side and ${photoCaps.pixels / 1e6} million in all are taken.`,
    );
  }
  return {
    mediaType,
    widthPx,
    heightPx,
    orientation: header.orientation ?? 1,
    ...(await readCameraFacts(header.exif)),
  };
}

/**
 * Makes the two pictures that screens show: upright, sRGB, JPEG, no metadata.
 * @throws ImageDamagedError
 */
export async function derivePhoto(original: Buffer, mediaType: PhotoMediaType): Promise<Derivatives> {
  try {
    const source = mediaType === 'image/heic' ? await decodeHeic(original) : openBytes(original);
    // Decoded and shrunk once; both pictures are made from these pixels.
    const { data, info } = await source
      .autoOrient()
      .resize({ width: viewSidePx, height: viewSidePx, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .raw()
      .toBuffer({ resolveWithObject: true });
    const pixels = () => sharp(data, { raw: { width: info.width, height: info.height, channels: info.channels } });
    const [view, thumb] = await Promise.all([
      pixels().jpeg({ quality: 82 }).toBuffer(),
      pixels()
        .resize({ width: thumbSidePx, height: thumbSidePx, fit: 'inside', withoutEnlargement: true })
        .jpeg({ quality: 78 })
        .toBuffer(),
    ]);
    return { view, thumb };
  } catch (error) {
    throw error instanceof ImageDamagedError ? error : new ImageDamagedError(reasonOf(error), { cause: error });
  }
}

/** `derivePhoto` for a file on this machine. */
export async function derivePhotoFile(path: string, mediaType: PhotoMediaType): Promise<Derivatives> {
  return derivePhoto(await readFile(path), mediaType);
}

const openBytes = (bytes: Buffer): Sharp =>
  sharp(bytes, { limitInputPixels: photoCaps.pixels, failOn: 'error', sequentialRead: true });

async function readMediaType(path: string): Promise<PhotoMediaType> {
  const found = await fileTypeFromFile(path);
  const type = found?.mime === 'image/heif' ? 'image/heic' : found?.mime;
  const allowed = mediaTypes.find((one) => one === type);
  if (!allowed) throw unsupported(found ? `${found.mime} (read from its bytes)` : 'no kind of picture we know');
  return allowed;
}

async function readHeader(path: string): Promise<Metadata> {
  try {
    // Only the header is read here, so the pixel cap can be explained instead of thrown.
    return await sharp(path, { limitInputPixels: false }).metadata();
  } catch (cause) {
    throw new ProblemError(
      'unsupported-media',
      'The start of the photo cannot be read; the file is damaged. Take or choose it again.',
      {
        cause,
      },
    );
  }
}

async function readCameraFacts(
  exif: Buffer | undefined,
): Promise<Pick<PhotoFacts, 'deviceTime' | 'deviceOffset' | 'hasGps'>> {
  const nothing = { deviceTime: null, deviceOffset: null, hasGps: false };
  if (!exif) return nothing;
  const marker = Buffer.from('Exif\0\0', 'latin1');
  const tiff = exif.subarray(0, marker.length).equals(marker) ? exif.subarray(marker.length) : exif;
  // Damaged camera data takes nothing from the picture: it reads as unknown.
  const tags = await exifr.parse(tiff, { gps: true, reviveValues: false, mergeOutput: true }).catch(() => undefined);
  if (!tags) return nothing;
  return {
    deviceTime: readDeviceTime(tags.DateTimeOriginal ?? tags.CreateDate),
    deviceOffset: readDeviceOffset(tags.OffsetTimeOriginal ?? tags.OffsetTime),
    hasGps: tags.GPSLatitude !== undefined && tags.GPSLongitude !== undefined,
  };
}

function readDeviceTime(value: unknown): string | null {
  const parts = /^(\d{4}):(\d{2}):(\d{2}) (\d{2}:\d{2}:\d{2})/.exec(String(value ?? ''));
  if (!parts) return null;
  const time = `${parts[1]}-${parts[2]}-${parts[3]}T${parts[4]}`;
  const parsed = new Date(`${time}Z`);
  const isReal = !Number.isNaN(parsed.getTime()) && parsed.toISOString().startsWith(time);
  return isReal && parts[1] !== '0000' ? time : null;
}

const readDeviceOffset = (value: unknown): string | null => /^[+-]\d{2}:\d{2}/.exec(String(value ?? ''))?.[0] ?? null;

/** In its own thread: it takes seconds of one core, and the server goes on answering meanwhile. */
async function decodeHeic(bytes: Buffer): Promise<Sharp> {
  type Answer = { width: number; height: number; pixels: Uint8Array } | { reason: string };
  const answer = await new Promise<Answer>((resolve, reject) => {
    const worker = new Worker(new URL('./heic-decoder.mjs', import.meta.url), {
      workerData: { bytes, maxPixels: photoCaps.pixels },
      execArgv: [],
    });
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', () => reject(new Error('the HEIC decoder ended without an answer')));
  });
  if ('reason' in answer) throw new ImageDamagedError(answer.reason);
  return sharp(answer.pixels, { raw: { width: answer.width, height: answer.height, channels: 4 } });
}

function reasonOf(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  if (/premature end|end of (input|file)|truncat|not enough data|read error/i.test(text))
    return 'the file ends before the picture does';
  if (/pixel limit/i.test(text)) return 'the picture has more pixels than are taken';
  return 'the picture in the file is damaged';
}

const megabytes = (bytes: number): number => Math.ceil((bytes / 1024 / 1024) * 10) / 10;
const tooLarge = (detail: string): ProblemError => new ProblemError('too-large', detail);
const unsupported = (found: string): ProblemError =>
  new ProblemError('unsupported-media', `The file is ${found}; JPEG, PNG, WebP and HEIC photos are taken.`);
