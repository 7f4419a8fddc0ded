import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text('moisture', 'moisture'),
  shapes: [{ box: [20, 20, 140, 82], look: 'wood' }],
};
