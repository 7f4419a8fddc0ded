/** Size of every drawn picture, px. */
export const widthPx = 1280;
export const heightPx = 960;

/** Numbers between 0 and 1 that are the same in every run (the mulberry32 generator, public domain). */
export function randomOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** One board with grain along its length. `tone` 0 is fresh, 1 is old and dark. */
export function board(
  { x, y, width, height }: Box,
  { tone = 0.3, lengthwise = width > height ? 'x' : 'y' } = {},
): string {
  const light = Math.round(205 - 95 * tone);
  const fill = `rgb(${light},${Math.round(light * 0.78)},${Math.round(light * 0.52)})`;
  const random = randomOf(Math.round(x * 31 + y * 17 + width * 7 + height));
  const along = lengthwise === 'x';
  const [length, across] = along ? [width, height] : [height, width];
  const lines = Array.from({ length: Math.ceil(across / 7) }, () => {
    const at = random() * across;
    const [a, b, c] = [random() - 0.5, random() - 0.5, random() - 0.5].map((wave) => at + wave * 9);
    const path = along
      ? `M${x} ${y + at}C${x + length * 0.3} ${y + (a ?? at)} ${x + length * 0.6} ${y + (b ?? at)} ${x + length} ${y + (c ?? at)}`
      : `M${x + at} ${y}C${x + (a ?? at)} ${y + length * 0.3} ${x + (b ?? at)} ${y + length * 0.6} ${x + (c ?? at)} ${y + length}`;
    return `<path d="${path}" stroke-width="${(0.8 + random() * 2.4).toFixed(1)}" opacity="${(0.12 + random() * 0.3).toFixed(2)}"/>`;
  });
  const id = `b${Math.round(x)}_${Math.round(y)}_${Math.round(width)}`;
  return `<g><clipPath id="${id}"><rect x="${x}" y="${y}" width="${width}" height="${height}"/></clipPath><rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}"/>
    <g clip-path="url(#${id})" fill="none" stroke="#3a2410">${lines.join('')}</g>
    <rect x="${x}" y="${y}" width="${width}" height="${height}" fill="none" stroke="#2b1d10" stroke-opacity=".55" stroke-width="3"/></g>`;
}

/** A flat piece of galvanized steel. */
export const steel = ({ x, y, width, height }: Box): string =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}" rx="3" fill="url(#zinc)" stroke="#3c4043" stroke-width="2.5"/>`;

/** A round head seen from the front; `deep` 0 is flush, 1 is broken through the face. */
export function nailHead(x: number, y: number, deep = 0): string {
  const crater = deep > 0 ? `<circle cx="${x}" cy="${y}" r="${13 + deep * 6}" fill="#2a1c10" opacity=".75"/>` : '';
  return `${crater}<circle cx="${x}" cy="${y}" r="9" fill="#8e9396" stroke="#33373a" stroke-width="2" opacity="${1 - deep * 0.4}"/>`;
}

/** A yellow tape with ticks each `inchPx`; sixteenths are left out, as on the photo of a far tape. */
export function tape(x: number, y: number, lengthPx: number, inchPx: number, turn = 0): string {
  const ticks: string[] = [];
  for (let at = 0, index = 0; at <= lengthPx; at += inchPx / 4, index += 1) {
    const size = index % 4 === 0 ? 34 : index % 2 === 0 ? 22 : 14;
    ticks.push(`M${x + at} ${y}v${size}`);
  }
  return `<g transform="rotate(${turn} ${x} ${y})"><rect x="${x - 8}" y="${y}" width="${lengthPx + 16}" height="58" fill="#f2c230" stroke="#6b5208" stroke-width="2"/>
    <path d="${ticks.join('')}" stroke="#111" stroke-width="2.6" fill="none"/></g>`;
}

/** An arrow in crayon, as crews mark what they mean. */
export const arrow = (x: number, y: number, turn = 0): string =>
  `<g transform="translate(${x} ${y}) rotate(${turn})" fill="none" stroke="#d42b1e" stroke-width="11" stroke-linecap="round"><path d="M-150 4C-100-8-50 8-8 0M-44-36L-6 0L-40 38"/></g>`;

const defs = `<defs>
  <filter id="rot" x="-20%" y="-20%" width="140%" height="140%"><feTurbulence type="fractalNoise" baseFrequency=".03 .05" numOctaves="4" seed="21" result="n"/><feDisplacementMap in="SourceGraphic" in2="n" scale="70"/></filter>
  <linearGradient id="zinc" x1="0" x2="1" y1="0" y2=".4"><stop stop-color="#b9bec1"/><stop offset=".45" stop-color="#dfe2e4"/><stop offset="1" stop-color="#8b9094"/></linearGradient>
  <radialGradient id="lamp" cx=".45" cy=".4" r=".85"><stop stop-color="#fff" stop-opacity=".16"/><stop offset=".6" stop-color="#000" stop-opacity="0"/><stop offset="1" stop-color="#000" stop-opacity=".62"/></radialGradient>
</defs>`;

/** Puts a scene into a dim cavity under a work lamp. */
export const frame = (scene: string, cavity = '#241c16'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}" viewBox="0 0 ${widthPx} ${heightPx}">${defs}
  <rect width="${widthPx}" height="${heightPx}" fill="${cavity}"/>${scene}
  <rect width="${widthPx}" height="${heightPx}" fill="url(#lamp)"/></svg>`;
