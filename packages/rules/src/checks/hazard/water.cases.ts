import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const S500 = 'IICRC S500 categories as quoted';

export const cases: readonly CheckCase[] = [
  {
    name: 'a broken supply pipe is clean water',
    origin: 'second-hand',
    source: S500,
    inputs: { source: 'supply-line', since: '2026-03-02' },
    expect: { verdict: 'meets', severity: 'record', values: { category: 1, since: '2026-03-02' }, referrals: [] },
  },
  {
    name: 'a washing machine is just past clean: category 2',
    origin: 'second-hand',
    source: S500,
    inputs: { source: 'appliance' },
    expect: {
      verdict: 'fails',
      severity: 'repair',
      values: { category: 2 },
      referrals: ['specialist'],
      repairs: ['specialist-visit', 'dry-out'],
    },
  },
  {
    name: 'sewage is category 3: stop and stay out',
    origin: 'second-hand',
    source: S500,
    inputs: { source: 'sewage' },
    expect: { verdict: 'fails', severity: 'make-safe', values: { category: 3 }, referrals: ['specialist'] },
  },
  {
    name: 'what comes back from beyond the trap is category 3 whatever it looks like',
    origin: 'second-hand',
    source: S500,
    inputs: { source: 'toilet-backflow' },
    expect: { verdict: 'fails', severity: 'make-safe', values: { category: 3 } },
  },
  {
    name: 'a flood is category 3',
    origin: 'second-hand',
    source: S500,
    inputs: { source: 'flood' },
    expect: { verdict: 'fails', severity: 'make-safe', values: { category: 3 } },
  },
  {
    name: 'clean water that stood for three weeks is not worse by the calendar alone',
    origin: 'second-hand',
    source: 'cleaning trade journal, October 2007: the standard sets no day count',
    inputs: { source: 'supply-line', since: 'three weeks ago' },
    expect: { verdict: 'meets', values: { category: 1 } },
  },
  {
    name: 'clean water judged contaminated on site counts as judged',
    origin: 'second-hand',
    source: `${S500}: what it touched can worsen it`,
    inputs: { source: 'supply-line', judgedCategory: '2' },
    expect: { verdict: 'fails', severity: 'repair', values: { category: 2 } },
  },
  {
    name: 'sewage judged clean stays sewage',
    origin: 'hand-worked',
    source: 'only a worse judgement counts',
    inputs: { source: 'sewage', judgedCategory: '1' },
    expect: { verdict: 'fails', severity: 'make-safe', values: { category: 3 } },
  },
  {
    name: 'water nobody can explain is treated as the worst',
    origin: 'common-practice',
    source: 'unknown is treated as present',
    inputs: { source: 'unknown' },
    expect: { verdict: 'fails', severity: 'make-safe', values: { category: 3 } },
  },
  {
    name: 'until somebody says where it came from it cannot be told',
    origin: 'hand-worked',
    source: 'no answer, no verdict',
    inputs: { since: 'last winter' },
    expect: { verdict: 'undetermined', missing: ['source'] },
  },
];

/** What the rule asks. */
export const rule = text(
  'Water is taken by where it came from, and as worse when someone competent judged it so. Only clean water is dried without a specialist.',
  'El agua se toma según su origen, y como peor si alguien competente así lo juzgó. Solo el agua limpia se seca sin especialista.',
);

/** What the check answers. */
export const values: ValueWords = {
  category: {
    label: text('Category of the water', 'Categoría del agua'),
    how: text(
      'By where it came from, or as judged on site if worse: 1 clean, 2 contaminated, 3 grossly.',
      'Por su origen, o la juzgada en el sitio si es peor: 1 limpia, 2 contaminada, 3 muy contaminada.',
    ),
  },
  since: {
    label: text('Wet since', 'Mojado desde'),
    how: text('As told; it changes no category by itself.', 'Según dijeron; no cambia la categoría por sí solo.'),
  },
};
