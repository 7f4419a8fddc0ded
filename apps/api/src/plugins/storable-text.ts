import type { FastifyInstance } from 'fastify';
import fp from 'fastify-plugin';
import { invalidInput } from '../platform/problem-error.ts';
import { isStorable } from '../shared/storable.ts';

/** Refuses text that cannot be kept, before anything is done with it. */
export const storableText = fp(async (app: FastifyInstance) => {
  app.addHook('preValidation', async (request) => {
    const pointer = findUnstorable(request.body, '') ?? findUnstorable(request.query, 'query');
    if (pointer === undefined) return;
    throw invalidInput(pointer, `${pointer}: a letter in it cannot be kept (NUL, or half of a pair); remove it.`);
  });
});

/** Pointer of a text (or a name) that cannot be kept. A list of what is left to look at, since a body may be nested deeper than calls can be. */
function findUnstorable(whole: unknown, at: string): string | undefined {
  const left: [value: unknown, pointer: string][] = [[whole, at]];
  for (let next = left.pop(); next; next = left.pop()) {
    const [value, pointer] = next;
    if (typeof value === 'string' && !isStorable(value)) return pointer;
    if (typeof value !== 'object' || value === null) continue;
    for (const [name, inner] of Object.entries(value)) {
      if (!isStorable(name)) return pointer;
      left.push([inner, `${pointer}/${name}`]);
    }
  }
  return undefined;
}
