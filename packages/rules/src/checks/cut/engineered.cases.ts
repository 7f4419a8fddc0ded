import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const R502 = 'IRC 2018 R502.8.2 as adopted by a state: none unless the maker allows it or a designer considered it';

export const cases: readonly CheckCase[] = [
  ...(['truss', 'i-joist', 'lvl', 'psl', 'glulam'] as const).map(
    (kind): CheckCase => ({
      name: `a hole in one of the kind ${kind} is never judged by the sawn-lumber rule`,
      origin: 'published',
      source: R502,
      inputs: { kind, what: 'hole' },
      expect: {
        verdict: 'undetermined',
        ratio: null,
        remaining: null,
        missing: [],
        values: { sawnRuleApplies: false },
        severity: 'engineer',
        referrals: ['engineer'],
        repairs: ['engineer-letter'],
      },
    }),
  ),
  {
    name: 'an engineered member of unknown kind also goes to an engineer',
    origin: 'common-practice',
    source: 'severity table, row 4',
    inputs: { what: 'notch' },
    expect: { verdict: 'undetermined', missing: ['kind'], severity: 'engineer', referrals: ['engineer'] },
  },
];

/** What the rule asks. */
export const rule = text(
  'No table allows a cut in a truss, I-joist or engineered beam: its maker or an engineer says what it still carries.',
  'Ninguna tabla permite cortar una cercha, vigueta I o viga de ingeniería: el fabricante o un ingeniero dice qué soporta.',
);

/** What the check answers. */
export const values: ValueWords = {
  sawnRuleApplies: {
    label: text('Rule for sawn lumber applies', 'Vale la regla de madera aserrada'),
    how: text('Never for an engineered member.', 'Nunca en un elemento de ingeniería.'),
  },
};
