import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { derivePhotoFile } from '../../apps/api/src/platform/images/image-codec.ts';
import { noiseJpeg } from './pictures.ts';
import { inTurns, type Row, rate } from './table.ts';

const photos = 8;

/** A 12 MP JPEG to 1600 px and 320 px, two at a time: against a bare sharp script doing the same two outputs. Then memory over many. */
export async function derivatives(): Promise<Row> {
  const folder = mkdtempSync(join(tmpdir(), 'underlath-bench-'));
  const path = join(folder, 'photo.jpg');
  writeFileSync(path, await noiseJpeg(4000, 3000, 90));
  const pairs = (one: () => Promise<unknown>) => async () =>
    rate(photos, async () => {
      for (let done = 0; done < photos; done += 2) await Promise.all([one(), one()]);
    });
  try {
    const ours = () => derivePhotoFile(path, 'image/jpeg');
    const result = await inTurns(
      5,
      pairs(ours),
      pairs(() => bare(path)),
    );
    return { work: 'derivatives, 12 MP', ...result, unit: 'photos/s', goal: 0.9, note: await memory(pairs(ours)) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function bare(path: string): Promise<void> {
  const upright = await sharp(path)
    .rotate()
    .resize(1600, 1600, { fit: 'inside' })
    .raw()
    .toBuffer({ resolveWithObject: true });
  const again = () => sharp(upright.data, { raw: upright.info });
  await again().jpeg({ quality: 82 }).toBuffer();
  await again().resize(320, 320, { fit: 'inside' }).jpeg({ quality: 78 }).toBuffer();
}

/** Resident memory after the first tenth and at the end; `--photos 1000` runs the long one. */
async function memory(batch: () => Promise<unknown>): Promise<string> {
  const asked = process.argv.indexOf('--photos');
  const total = asked > 0 ? Number(process.argv[asked + 1]) : 80;
  const megabytes: number[] = [];
  for (let done = 0; done < total; done += photos) {
    await batch();
    megabytes.push(process.memoryUsage.rss() / 1024 / 1024);
  }
  const early = megabytes[Math.floor(megabytes.length / 10)] ?? 0;
  return `memory over ${total} photos: ${early.toFixed(0)} MB after a tenth, ${megabytes.at(-1)?.toFixed(0)} MB at the end`;
}
