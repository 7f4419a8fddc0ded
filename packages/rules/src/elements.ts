import { type CheckCard, type Text, text } from './kernel/index.ts';

/** The parts of a house checks are about, by the first half of their ids, in the order they are picked from. */
const ELEMENT_WORDS: Readonly<Record<string, Text>> = {
  cut: text('Cuts, notches and holes', 'Cortes, muescas y agujeros'),
  connection: text('Nails and hangers', 'Clavos y estribos'),
  bearing: text('Where a beam sits', 'Donde se apoya una viga'),
  'shear-wall': text('Shear walls', 'Paredes de corte'),
  anchor: text('Bolts and hold-downs', 'Pernos y anclajes'),
  decay: text('Rot, rust and insects', 'Pudrición, óxido e insectos'),
  hazard: text('Hazards', 'Peligros'),
  level: text('Slope and sag', 'Desnivel y pandeo'),
  movement: text('Drying and shrinking', 'Secado y contracción'),
  sample: text('Many similar parts', 'Muchas piezas iguales'),
  demand: text('Load on the house', 'Carga sobre la casa'),
};

type Named = Pick<CheckCard, 'id' | 'title'>;

const elementId = (check: Named): string => check.id.slice(0, check.id.indexOf('.'));

/** What a check is about, in words; the check's own title where nobody named its kind, so that a new one needs no entry. */
export const elementWords = (check: Named): Text => ELEMENT_WORDS[elementId(check)] ?? check.title;

export interface ElementChecks<C extends Named> {
  readonly id: string;
  readonly name: Text;
  readonly checks: readonly [C, ...C[]];
}

/** The checks by what they are about, in the order above; kinds not named there come last. */
export function checksByElement<C extends Named>(checks: readonly C[]): ElementChecks<C>[] {
  const groups = new Map<string, [C, ...C[]]>();
  for (const check of checks) {
    const id = elementId(check);
    const group = groups.get(id);
    if (group) group.push(check);
    else groups.set(id, [check]);
  }
  const order = Object.keys(ELEMENT_WORDS);
  const place = (id: string): number => (order.includes(id) ? order.indexOf(id) : order.length);
  return [...groups]
    .map(([id, group]) => ({ id, name: elementWords(group[0]), checks: group }))
    .toSorted((a, b) => place(a.id) - place(b.id));
}
