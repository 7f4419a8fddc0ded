// Runs as a worker thread. Plain JavaScript, so that it starts the same from the sources and beside the built server.
import { parentPort, workerData } from 'node:worker_threads';
import libheif from 'libheif-js/wasm-bundle.js';

/** Decodes the one picture of a HEIC file to RGBA, upright. */
async function decode({ bytes, maxPixels }) {
  const pictures = new libheif.HeifDecoder().decode(bytes);
  const picture = pictures[0];
  if (!picture) return { reason: 'no picture in the file can be decoded' };
  const [width, height] = [picture.get_width(), picture.get_height()];
  if (width * height > maxPixels) return { reason: 'the picture has more pixels than are taken' };
  const pixels = new Uint8ClampedArray(width * height * 4);
  const shown = await new Promise((done) => picture.display({ data: pixels, width, height }, done));
  return shown
    ? { width, height, pixels: new Uint8Array(pixels.buffer) }
    : { reason: 'the picture in the file is damaged' };
}

const answer = await decode(workerData);
parentPort.postMessage(answer, 'pixels' in answer ? [answer.pixels.buffer] : []);
