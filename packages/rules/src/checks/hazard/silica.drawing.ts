import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A saw cutting masonry, with the dust it makes',
    'Una sierra cortando mampostería, con el polvo que levanta',
  ),
  shapes: [
    { box: [14, 66, 152, 48], look: 'masonry' },
    { circle: [78, 54, 28], look: 'metal' },
    { circle: [78, 54, 7], look: 'bolt' },
    { outline: [78, 40, 78, 24, 106, 24, 130, 34, 152, 34, 152, 48, 124, 48, 108, 44, 92, 44], look: 'tool' },
    { line: [50, 66, 106, 66], kind: 'hidden' },
    { mark: 'nail', at: [40, 58, 32, 50, 44, 46, 24, 58, 30, 38, 18, 46] },
    { path: 'M48 60 Q38 40 24 44 Q10 48 14 60', kind: 'thin' },
    { path: 'M44 54 Q40 28 26 28 Q14 28 10 40', kind: 'thin' },
    { point: [152, 16, 116, 30], of: 'task' },
  ],
};
