import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const OSHA = '29 CFR 1926.1101 as quoted: buildings of 1980 or before';
const NESHAP = '40 CFR 61.141 and 61.145, July 2002 CFR';
const VERMICULITE =
  'EPA and ATSDR leaflet of 2003: assume it may contain asbestos, do not disturb it; severity rows 3 and 7';
const HOUSE = { dwellingUnits: 1, loadBearingRemoved: false } as const;
const FLATS = { dwellingUnits: 5, loadBearingRemoved: false, yearBuilt: 1960 } as const;

export const cases: readonly CheckCase[] = [
  {
    name: 'pipe wrap in a house of exactly 1980 is presumed to be asbestos',
    origin: 'second-hand',
    source: OSHA,
    inputs: { ...HOUSE, yearBuilt: 1980, materials: ['pipe-insulation'] },
    expect: {
      verdict: 'fails',
      severity: 'repair',
      values: { treatAsAsbestos: true, presumed: 1, mayContain: 0, federalNotice: false },
      referrals: ['specialist'],
      repairs: ['specialist-visit'],
    },
  },
  {
    name: 'in a house of 1981 nothing is presumed, but ask before it is disturbed',
    origin: 'second-hand',
    source: OSHA,
    inputs: { ...HOUSE, yearBuilt: 1981, materials: ['pipe-insulation', 'flooring'] },
    expect: {
      verdict: 'not-applicable',
      severity: 'record',
      values: { treatAsAsbestos: false },
      referrals: ['specialist'],
    },
  },
  {
    name: 'an unknown year is treated as old',
    origin: 'common-practice',
    source: 'unknown is treated as old',
    inputs: { ...HOUSE, materials: ['flooring'] },
    expect: { verdict: 'fails', severity: 'repair', values: { treatAsAsbestos: true } },
  },
  {
    name: 'wallboard is not presumed, but may contain it and is treated the same until sampled',
    origin: 'second-hand',
    source: 'a county file quoting 29 CFR 1926.1101: wallboard is outside the presumption',
    inputs: { ...HOUSE, yearBuilt: 1962, materials: [{ kind: 'wallboard', areaSf: 96 }] },
    expect: { verdict: 'fails', values: { presumed: 0, mayContain: 1, areaSf: 96 } },
  },
  {
    name: 'material that an inspector tested free of it meets',
    origin: 'second-hand',
    source: 'the presumption can be rebutted by sampling, 29 CFR 1926.1101 as quoted',
    inputs: { ...HOUSE, yearBuilt: 1955, materials: [{ kind: 'surfacing', areaSf: 200, testedFree: true }] },
    expect: { verdict: 'meets', severity: 'record', values: { presumed: 0, areaSf: 0 }, referrals: [] },
  },
  {
    name: 'no suspect material meets',
    origin: 'hand-worked',
    source: 'nothing there, nothing presumed',
    inputs: { yearBuilt: 1955, materials: [], loadBearingRemoved: true, dwellingUnits: 1 },
    expect: { verdict: 'meets', severity: 'record' },
  },
  {
    name: 'already torn: stop',
    origin: 'hand-worked',
    source: 'severity row 3',
    inputs: { ...HOUSE, yearBuilt: 1955, materials: ['pipe-insulation'] },
    situation: { disturbed: true },
    expect: { verdict: 'fails', severity: 'make-safe', referrals: ['specialist'] },
  },
  {
    name: 'taking out a bearing wall with suspect plaster on it is about to disturb it: stop',
    origin: 'hand-worked',
    source: 'severity row 3',
    inputs: { yearBuilt: 1940, materials: ['wallboard'], loadBearingRemoved: true, dwellingUnits: 1 },
    expect: { verdict: 'fails', severity: 'make-safe', values: { federalNotice: false } },
  },
  {
    name: 'four homes are outside the federal notice rule',
    origin: 'published',
    source: 'EPA Region 5 notification guide: four or fewer dwelling units',
    inputs: { ...FLATS, dwellingUnits: 4, materials: [{ kind: 'pipe-insulation', lengthFt: 500 }] },
    expect: { verdict: 'fails', values: { federalNotice: false }, referrals: ['specialist'] },
  },
  {
    name: 'five homes and 260 feet of pipe wrap, exactly at the limit, need the federal notice',
    origin: 'published',
    source: NESHAP,
    inputs: { ...FLATS, materials: [{ kind: 'pipe-insulation', lengthFt: 260 }] },
    expect: { verdict: 'fails', values: { pipeFt: 260, federalNotice: true }, referrals: ['specialist', 'official'] },
  },
  {
    name: 'five homes and just under 160 SF need none',
    origin: 'published',
    source: NESHAP,
    inputs: { ...FLATS, materials: [{ kind: 'surfacing', areaSf: 159.9 }] },
    expect: { verdict: 'fails', values: { federalNotice: false } },
  },
  {
    name: 'several small houses in one project are inside the federal rule',
    origin: 'published',
    source: 'EPA notice of July 28, 1995 (60 FR 38725)',
    inputs: { ...HOUSE, yearBuilt: 1950, severalBuildings: true, materials: [{ kind: 'siding', areaSf: 160 }] },
    expect: { verdict: 'fails', values: { federalNotice: true } },
  },
  {
    name: 'taking out a load-supporting member is demolition and needs notice at any amount',
    origin: 'published',
    source: 'EPA Region 5 notification guide: demolition against renovation',
    inputs: { yearBuilt: 1990, dwellingUnits: 6, loadBearingRemoved: true, materials: [] },
    expect: { verdict: 'meets', values: { federalNotice: true }, referrals: ['official'] },
  },
  {
    name: 'vermiculite fill left alone is treated as asbestos, also in a house of 1985',
    origin: 'published',
    source: VERMICULITE,
    inputs: { ...HOUSE, yearBuilt: 1985, materials: ['vermiculite'] },
    situation: { disturbed: false },
    expect: {
      verdict: 'fails',
      severity: 'repair',
      values: { treatAsAsbestos: true, presumed: 0, mayContain: 1 },
      referrals: ['specialist'],
      repairs: ['specialist-visit'],
    },
  },
  {
    name: 'vermiculite that runs out of an opened ceiling: stop',
    origin: 'published',
    source: VERMICULITE,
    inputs: { ...HOUSE, yearBuilt: 1985, materials: ['vermiculite'] },
    situation: { disturbed: true },
    expect: { verdict: 'fails', severity: 'make-safe', referrals: ['specialist'] },
  },
  {
    name: 'flooring beside vermiculite in a house of 1985 is still not presumed',
    origin: 'second-hand',
    source: `${OSHA}; ${VERMICULITE}`,
    inputs: { ...HOUSE, yearBuilt: 1985, materials: ['flooring', { kind: 'vermiculite', testedFree: true }] },
    expect: { verdict: 'not-applicable', values: { treatAsAsbestos: false } },
  },
  {
    name: 'until somebody has looked at the materials it cannot be told',
    origin: 'hand-worked',
    source: 'no look, no verdict',
    inputs: { yearBuilt: 1955, dwellingUnits: 1 },
    expect: { verdict: 'undetermined', missing: ['materials'], referrals: ['specialist'] },
  },
];

/** What the rule asks. */
export const rule = text(
  'In a house of the presumed years, or of unknown year, suspect material is treated as asbestos until a licensed specialist has tested it.',
  'En una casa de los años presuntos, o de año desconocido, el material sospechoso se trata como asbesto hasta que un especialista con licencia lo analice.',
);

/** What the check answers. */
export const values: ValueWords = {
  treatAsAsbestos: {
    label: text('Treated as asbestos', 'Se trata como asbesto'),
    how: text(
      'Suspect, untested, and in a building of 1980 or before or of unknown age; vermiculite in any building.',
      'Sospechoso, sin probar, en un edificio de 1980 o antes o de edad desconocida; vermiculita en cualquiera.',
    ),
  },
  presumed: {
    label: text('Materials presumed to be asbestos', 'Materiales que se presumen asbesto'),
    how: text(
      'Pipe wrap, sprayed or troweled surfaces and old flooring, not tested free.',
      'Forro de tubos, superficies rociadas o con llana y pisos viejos, sin prueba que los libre.',
    ),
  },
  mayContain: {
    label: text('Other materials that may contain it', 'Otros materiales que pueden tenerlo'),
    how: text('All others listed and not tested free.', 'Los demás de la lista, sin prueba que los libre.'),
  },
  pipeFt: {
    label: text('Suspect length on pipes', 'Largo sospechoso en tubos'),
    how: text('Lengths added up.', 'Suma de los largos.'),
  },
  areaSf: {
    label: text('Suspect area', 'Área sospechosa'),
    how: text('Areas added up.', 'Suma de las áreas.'),
  },
  federalNotice: {
    label: text('Federal notice due', 'Aviso federal obligatorio'),
    how: text(
      'More than 4 homes or several buildings, and load-bearing parts taken out, or 260 ft on pipes or 160 SF reached.',
      'Más de 4 viviendas o varios edificios, y se quita algo que carga, o se llega a 260 ft en tubos o 160 pies².',
    ),
  },
};
