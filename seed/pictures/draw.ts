// npm run draw-demo                       draws every picture of the demo anew into seed/pictures/drawn/; takes minutes
// npm run draw-demo -- tile,mold          only these
// npm run draw-demo -- tile --quick       small and grainy, to look at while drawing
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { randomOf } from './noise.ts';
import { pictureFile } from './photos.ts';
import { type PictureName, scenes } from './scenes.ts';
import { trace } from './trace.ts';

const isQuick = process.argv.includes('--quick');
const [width, height, samples] = isQuick ? [480, 360, 4] : [1024, 768, 6];
const names = process.argv
  .slice(2)
  .find((word) => !word.startsWith('--'))
  ?.split(',');

for (const name of Object.keys(scenes) as PictureName[]) {
  if (names && !names.includes(name)) continue;
  const started = Date.now();
  const light = trace(scenes[name](), width, height, samples);
  mkdirSync(dirname(pictureFile(name)), { recursive: true });
  await develop(light).jpeg({ quality: 86, mozjpeg: true }).toFile(pictureFile(name));
  console.log(`${name} … ${((Date.now() - started) / 1000).toFixed(1)} s`);
}

/** What a small camera makes of the light: bright parts roll off, the corners darken, and the sensor is noisy in the dark. */
function develop(light: Float32Array): Sharp {
  const random = randomOf(5);
  const pixels = Buffer.alloc(light.length);
  for (let at = 0; at < light.length; at += 3) {
    const pixel = at / 3;
    const [x, y] = [(pixel % width) / width - 0.5, Math.floor(pixel / width) / height - 0.5];
    const corner = 1 - 0.75 * (x * x + y * y);
    const grain = random() + random() - 1;
    for (let part = 0; part < 3; part++)
      pixels[at + part] = toByte((light[at + part] as number) * corner * 0.98, grain);
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } });
}

/** A filmic curve fitted by Krzysztof Narkowicz (public domain), then the usual gamma. */
function toByte(value: number, grain: number): number {
  const rolled = (value * (2.51 * value + 0.03)) / (value * (2.43 * value + 0.59) + 0.14);
  const shown = Math.min(1, Math.max(0, rolled)) ** (1 / 2.2);
  return Math.max(0, Math.min(255, Math.round(255 * shown + grain * (6 - 4 * shown))));
}
