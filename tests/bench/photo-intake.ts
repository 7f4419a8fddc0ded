import { noiseJpeg, padded } from './pictures.ts';
import { inTurns, type Row, rate } from './table.ts';
import { sendPhoto, uploadBody, type Visitor } from './visitor.ts';

const megabyte = 1024 * 1024;
const size = 5 * megabyte;
const photos = 16;
const atOnce = 4;

/** Receive 5 MB, hash, store, answer: against a bare server that streams the same bytes to disk with SHA-256. */
export async function photoIntake(visitor: Visitor, floorUrl: string): Promise<Row> {
  const picture = await noiseJpeg(1600, 1200);
  const send = (one: (bytes: Buffer) => Promise<unknown>) => async () => {
    const batch = Array.from({ length: photos }, () => uploadBody(padded(picture, size)));
    return rate((photos * size) / megabyte, async () => {
      const queue = [...batch];
      const worker = async () => {
        for (let next = queue.pop(); next; next = queue.pop()) await one(next);
      };
      await Promise.all(Array.from({ length: atOnce }, worker));
    });
  };
  const result = await inTurns(
    7,
    send((bytes) => sendPhoto(visitor, bytes)),
    send(async (bytes) => (await fetch(floorUrl, { method: 'POST', body: new Uint8Array(bytes) })).text()),
  );
  return { work: 'photo intake, 5 MB', ...result, unit: 'MB/s', goal: 0.8 };
}
