import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findProjectRoot } from '../project-root.ts';
import { derivePhoto, inspectPhoto } from './image-codec.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'underlath-codec-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function saved(name: string, bytes: Buffer): [path: string, byteCount: number] {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return [path, bytes.byteLength];
}

/** Left half dark, right half light, so that a turn shows. */
function halves(width: number, height: number) {
  const dark = { create: { width: width / 2, height, channels: 3 as const, background: '#202020' } };
  return sharp({ create: { width, height, channels: 3, background: '#e0e0e0' } }).composite([
    { input: dark, left: 0, top: 0 },
  ]);
}

const camera = {
  IFD2: { DateTimeOriginal: '2026:03:03 14:05:09', OffsetTimeOriginal: '-08:00' },
  IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '45/1 31/1 0/1', GPSLongitudeRef: 'W', GPSLongitude: '122/1 40/1 0/1' },
};

const onItsSide = () => halves(800, 600).withMetadata({ orientation: 6 }).withExifMerge(camera).jpeg().toBuffer();

/** A PNG of one color and one bit a pixel: huge in pixels, tiny in bytes. */
function pngBomb(side: number): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const length = Buffer.alloc(4);
    length.writeUInt32BE(data.length);
    const check = Buffer.alloc(4);
    check.writeUInt32BE(crc32(body));
    return Buffer.concat([length, body, check]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(side, 0);
  header.writeUInt32BE(side, 4);
  header[8] = 1;
  const rows = Buffer.alloc(side * (1 + Math.ceil(side / 8)));
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function crc32(bytes: Buffer): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}

describe('what a file is', () => {
  test('a JPEG held on its side says its upright size, its clock, its zone, and that it knows the place', async () => {
    expect(await inspectPhoto(...saved('side.jpg', await onItsSide()))).toEqual({
      mediaType: 'image/jpeg',
      widthPx: 600,
      heightPx: 800,
      orientation: 6,
      deviceTime: '2026-03-03T14:05:09',
      deviceOffset: '-08:00',
      hasGps: true,
    });
  });

  test('a picture without camera data says that nothing is known', async () => {
    const facts = await inspectPhoto(...saved('plain.png', await halves(64, 48).png().toBuffer()));
    expect(facts).toMatchObject({ mediaType: 'image/png', deviceTime: null, deviceOffset: null, hasGps: false });
  });

  test('a clock that was never set is unknown, not the year 0', async () => {
    const unset = { IFD2: { DateTimeOriginal: '0000:00:00 00:00:00' } };
    const bytes = await halves(64, 48).withExif(unset).jpeg().toBuffer();
    expect((await inspectPhoto(...saved('unset.jpg', bytes))).deviceTime).toBeNull();
  });

  test('a WebP says its clock too', async () => {
    const bytes = await halves(64, 48).withExif(camera).webp().toBuffer();
    expect(await inspectPhoto(...saved('a.webp', bytes))).toMatchObject({
      mediaType: 'image/webp',
      deviceTime: '2026-03-03T14:05:09',
    });
  });

  test.each([
    ['words renamed to .jpg', 'note.jpg', async () => Buffer.from('the plate was cut for a pipe, 3 in of 5 1/2')],
    [
      'an SVG',
      'drawing.png',
      async () => Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'),
    ],
    ['a GIF', 'a.jpg', async () => halves(32, 32).gif().toBuffer()],
    ['a TIFF', 'b.jpg', async () => halves(32, 32).tiff().toBuffer()],
    ['an AVIF', 'c.heic', async () => halves(32, 32).avif().toBuffer()],
  ])('%s is refused by its bytes, whatever its name', async (_what, name, make) => {
    await expect(inspectPhoto(...saved(name, await make()))).rejects.toMatchObject({ type: 'unsupported-media' });
  });

  test('an animated WebP is refused: evidence has one frame', async () => {
    const frames = await Promise.all(
      ['#111111', '#eeeeee'].map((background) =>
        sharp({ create: { width: 20, height: 20, channels: 3, background } })
          .png()
          .toBuffer(),
      ),
    );
    const moving = await sharp(frames, { join: { animated: true } })
      .webp({ delay: [100, 100] })
      .toBuffer();
    await expect(inspectPhoto(...saved('moving.webp', moving))).rejects.toThrow('2 frames');
  });

  test('a small PNG of 16,000 x 16,000 pixels is refused before it is decoded', async () => {
    const bomb = pngBomb(16_000);
    expect(bomb.byteLength).toBeLessThan(40_000);
    await expect(inspectPhoto(...saved('bomb.png', bomb))).rejects.toThrow(
      'The photo is 16000 x 16000 pixels; up to 12000 a side and 50 million in all are taken.',
    );
  });

  test('a file over 25 MB is refused by its size', async () => {
    const [path] = saved('big.jpg', await halves(64, 48).jpeg().toBuffer());
    await expect(inspectPhoto(path, 26 * 1024 * 1024)).rejects.toThrow('The photo is 26 MB; up to 25 MB are taken.');
  });
});

describe('the two pictures made for screens', () => {
  test('stand upright, fit 1600 and 320 px, and carry no metadata', async () => {
    const large = await halves(3000, 2000).withMetadata({ orientation: 6 }).withExifMerge(camera).jpeg().toBuffer();
    const { view, thumb } = await derivePhoto(large, 'image/jpeg');
    const seen = await sharp(view).metadata();
    expect([seen.format, seen.width, seen.height, seen.orientation, seen.exif]).toEqual([
      'jpeg',
      1067,
      1600,
      undefined,
      undefined,
    ]);
    const small = await sharp(thumb).metadata();
    expect([small.format, small.width, small.height, small.exif]).toEqual(['jpeg', 213, 320, undefined]);
    // Orientation 6 turns clockwise, so the dark left half comes to the top.
    const [top, bottom] = await Promise.all([0, 1].map((row) => shade(view, row)));
    expect(top).toBeLessThan(60);
    expect(bottom).toBeGreaterThan(200);
  });

  test('are never larger than the photo', async () => {
    const { view } = await derivePhoto(await halves(200, 100).png().toBuffer(), 'image/png');
    expect(await sharp(view).metadata()).toMatchObject({ width: 200, height: 100 });
  });

  test('are made from HEIC as well', async () => {
    const path = join(findProjectRoot(), 'tests/fixtures/photos/drawn.heic');
    const bytes = await readFile(path);
    expect(await inspectPhoto(path, bytes.byteLength)).toMatchObject({
      mediaType: 'image/heic',
      widthPx: 480,
      heightPx: 320,
    });
    const { view } = await derivePhoto(bytes, 'image/heic');
    const { data, info } = await sharp(view).raw().toBuffer({ resolveWithObject: true });
    expect([info.width, info.height]).toEqual([480, 320]);
    const farthest = (x: number, y: number, wanted: number[]) => {
      const offset = (y * info.width + x) * info.channels;
      return Math.max(...wanted.map((value, channel) => Math.abs((data[offset + channel] ?? Number.NaN) - value)));
    };
    // The drawing has a brown left edge and a near-black disc on the right; lossy coding moves a channel by a few steps.
    expect(farthest(20, 160, [0x7a, 0x4a, 0x22])).toBeLessThan(16);
    expect(farthest(360, 160, [0x3b, 0x3b, 0x3b])).toBeLessThan(16);
  });

  test('a cut-off JPEG is refused in words', async () => {
    const whole = await halves(1200, 900).jpeg().toBuffer();
    await expect(derivePhoto(whole.subarray(0, whole.length / 2), 'image/jpeg')).rejects.toThrow(
      'the file ends before the picture does',
    );
  });

  test('a damaged HEIC is refused in words', async () => {
    const whole = await readFile(join(findProjectRoot(), 'tests/fixtures/photos/drawn.heic'));
    await expect(derivePhoto(whole.subarray(0, 600), 'image/heic')).rejects.toMatchObject({
      name: 'ImageDamagedError',
    });
  });
});

async function shade(picture: Buffer, row: number): Promise<number> {
  const { width, height } = await sharp(picture).metadata();
  const part = { left: 0, top: Math.floor((row * height) / 2) + 10, width, height: Math.floor(height / 2) - 20 };
  const { channels } = await sharp(await sharp(picture).extract(part).toBuffer()).stats();
  return channels[0]?.mean ?? Number.NaN;
}
