import { choice, defineCheck, type Judgement, named, type Text, text, yesNoOf } from '../../kernel/index.ts';
import { ENGINEERED_CUTS_2018 } from '../../standards/irc-2018/cuts.data.ts';
import { ENGINEERED_CUTS_2021 } from '../../standards/irc-2021/cuts.data.ts';
import { ENGINEERED_CUTS_2024 } from '../../standards/irc-2024/cuts.data.ts';
import { engineeredCard } from './engineered.card.ts';
import { editionOfCode } from './limits.ts';

const EDITIONS = [
  { id: 'irc-2018', source: ENGINEERED_CUTS_2018 },
  { id: 'irc-2021', source: ENGINEERED_CUTS_2021 },
  { id: 'irc-2024', source: ENGINEERED_CUTS_2024 },
] as const;

const inputs = {
  kind: choice({
    options: [
      { value: 'truss', label: text('Truss', 'Cercha') },
      { value: 'i-joist', label: text('I-joist', 'Vigueta I') },
      { value: 'lvl', label: text('LVL', 'LVL') },
      { value: 'psl', label: text('PSL', 'PSL') },
      { value: 'glulam', label: text('Glued laminated timber', 'Madera laminada encolada') },
    ],
    label: text('What it is', 'Qué es'),
  }),
  what: named({
    maxLength: 200,
    needed: 'optional',
    label: text('What was cut', 'Qué se cortó'),
    howToMeasure: text(
      'Where and how large, such as "2 in hole in the web".',
      'Dónde y cuánto, como "agujero de 2 in en el alma".',
    ),
  }),
} as const;

const NO_TABLE = text(
  'No cut or hole is allowed here unless the maker permits it or an engineer has considered it; the sawn-lumber rule never applies.',
  'Aquí no se permite corte ni agujero salvo que el fabricante lo permita o un ingeniero lo haya estudiado; la regla de madera aserrada nunca vale.',
);
const BY_KIND: Readonly<Record<string, Text>> = {
  truss: text(
    'Every piece of a truss carries load; one cut can bring down all of it.',
    'Cada pieza de una cercha carga; un corte puede tumbarla entera.',
  ),
  'i-joist': text(
    'The flanges of an I-joist carry the bending: a nick counts. Web holes have places the maker prints.',
    'Las alas de la vigueta I llevan la flexión: una mella cuenta. El fabricante indica dónde van agujeros en el alma.',
  ),
};
const KEEP_OFF = text(
  'Put no more load on it and cut no further until the engineer has answered.',
  'No le ponga más carga ni corte más hasta que responda el ingeniero.',
);

/** A cut in a truss or an engineered member: no table exists, an engineer decides. */
export const engineered = defineCheck({
  ...engineeredCard,
  editions: EDITIONS.map(editionOfCode),
  defaultEdition: 'irc-2024',
  sources: EDITIONS.map(({ source }) => source),
  inputs,
  evaluate: ({ kind }, { edition }): Judgement => ({
    verdict: 'undetermined',
    referrals: UNTOLD.referrals,
    repairs: UNTOLD.repairs,
    facts: UNTOLD.facts,
    values: () => ({ sawnRuleApplies: yesNoOf(false) }),
    reasons: () => [NO_TABLE, ...(BY_KIND[kind] ? [BY_KIND[kind]] : [])],
    cautions: () => [KEEP_OFF],
    sources: EDITIONS.flatMap(({ id, source }) => (id === edition ? [source] : [])),
  }),
  knownAlready: () => ({ ...UNTOLD, reasons: () => [NO_TABLE] }),
  repairs: ['engineer-letter'],
  client: {
    found: () =>
      text('A beam made in a factory was cut or drilled.', 'Una viga hecha en fábrica fue cortada o perforada.'),
    why: text(
      'These beams are made to carry load as they are. No table tells how much strength a cut takes.',
      'Estas vigas están hechas para cargar tal como son. Ninguna tabla dice cuánta fuerza quita un corte.',
    ),
    ifNot: text('It can break without a warning.', 'Puede romperse sin aviso.'),
  },
  doesNotCover: [text('How strong it still is.', 'Cuánto resiste todavía.')],
  cases: () => import('./engineered.cases.ts'),
});

const UNTOLD = {
  referrals: ['engineer'],
  repairs: ['engineer-letter'],
  facts: { engineeredCut: true, memberKind: 'engineered' },
} as const;
