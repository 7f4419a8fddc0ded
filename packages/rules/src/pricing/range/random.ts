/**
 * Seeded random streams. The generator is sfc32 (Chris Doty-Humphrey, public domain, from PractRand): 128 bits of state, a
 * counter that keeps every cycle long. Each stream has its own name, so that adding a line changes no other line's draws.
 */
const WARM_UP = 12;
const FNV_PRIME = 0x01000193;
const TO_UNIT = 2 ** -32;

/** FNV-1a over the UTF-16 units of a text, its bits mixed once more. */
function hash(text: string, start: number): number {
  let value = start;
  for (let at = 0; at < text.length; at++) value = Math.imul(value ^ text.charCodeAt(at), FNV_PRIME);
  value = Math.imul(value ^ (value >>> 16), 0x85ebca6b);
  value = Math.imul(value ^ (value >>> 13), 0xc2b2ae35);
  return value ^ (value >>> 16);
}

/** State of the stream with this name: four words, the last its counter. */
export function openStream(name: string): Int32Array {
  const state = Int32Array.of(hash(name, 0x811c9dc5), hash(name, 0x9e3779b9), hash(name, 0x7f4a7c15), 1);
  fillUniform(state, new Float64Array(WARM_UP));
  return state;
}

/** Fills with numbers evenly spread over 0 to 1, both left out, and moves the stream on. */
export function fillUniform(state: Int32Array, into: Float64Array): void {
  let [a, b, c, d] = state as unknown as [number, number, number, number];
  for (let at = 0; at < into.length; at++) {
    const drawn = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + drawn) | 0;
    into[at] = ((drawn >>> 0) + 0.5) * TO_UNIT;
  }
  state.set([a, b, c, d]);
}
