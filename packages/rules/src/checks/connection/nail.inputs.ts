import {
  assume,
  type Condition,
  choice,
  flag,
  type InputIssue,
  length,
  number,
  type Partials,
  refuse,
  refuseLonger,
  type Text,
  text,
} from '../../kernel/index.ts';
import { demandField, loadDurationField, speciesField } from '../../standards/nds-2018/fields.ts';
import { NAIL_DIAMETER_IN, NAIL_LENGTH_IN, type NamedNail } from '../../standards/nds-2018/nails.data.ts';
import { NAIL_YIELD_SOURCE } from '../../standards/nds-2018/nails.ts';
import { SPECIFIC_GRAVITY } from '../../standards/nds-2018/species.data.ts';

const NAILS = Object.keys(NAIL_LENGTH_IN) as NamedNail[];
const KIND_ES: Readonly<Record<string, string>> = { common: 'común', box: 'box', sinker: 'sinker' };

/** 50d; from 1/4 in on a dowel is no longer judged as a nail. */
const THICKEST_NAIL_IN = 0.244;

function nailLabel(nail: NamedNail): Text {
  const [penny = '', kind = ''] = nail.split('-');
  const size = `${NAIL_DIAMETER_IN[nail]} x ${NAIL_LENGTH_IN[nail]} in`;
  return text(`${penny} ${kind}, ${size}`, `${penny} ${KIND_ES[kind]}, ${size}`);
}

/** Every named nail, as a form offers it. */
export const NAIL_OPTIONS = NAILS.map((value) => ({ value, label: nailLabel(value) }));

const bySize: Condition = {
  all: [
    { input: 'nail', known: false },
    { input: 'diameterIn', known: true },
  ],
};

export const inputs = {
  nail: choice({
    options: NAIL_OPTIONS,
    needed: { when: { input: 'diameterIn', known: false } },
    label: text('Nail', 'Clavo'),
    howToMeasure: text('From the box, or pull one and measure it.', 'De la caja, o saque uno y mídalo.'),
  }),
  diameterIn: length({
    unit: 'in',
    min: 0.06,
    max: THICKEST_NAIL_IN,
    needed: 'optional',
    showWhen: { input: 'nail', known: false },
    label: text('Or: shank diameter', 'O: diámetro del clavo'),
  }),
  lengthIn: length({
    unit: 'in',
    min: 0.5,
    max: 8,
    needed: {
      when: {
        all: [
          bySize,
          {
            any: [
              { input: 'penetrationIn', known: false },
              { input: 'toeNailed', is: [true] },
            ],
          },
        ],
      },
    },
    showWhen: bySize,
    label: text('Nail length', 'Largo del clavo'),
  }),
  fybPsi: number({
    unit: 'psi',
    min: 30_000,
    max: 200_000,
    needed: 'optional',
    assumes: assume(
      text(
        'Ordinary nail steel, whose strength follows from the diameter.',
        'Acero de clavo común, cuya resistencia depende del diámetro.',
      ),
      NAIL_YIELD_SOURCE,
    ),
    label: text('Bending yield strength, if known', 'Resistencia a flexión, si se sabe'),
  }),
  sideThicknessIn: length({
    unit: 'in',
    min: 0.015,
    max: 6,
    denominator: 32,
    needed: { when: { not: { input: 'toeNailed', is: [true] } } },
    label: text('Thickness of the piece nailed on', 'Grueso de la pieza clavada'),
  }),
  sideMaterial: choice({
    options: [
      { value: 'sawn', label: text('Lumber', 'Madera aserrada') },
      { value: 'osb', label: text('OSB', 'OSB') },
      { value: 'plywood', label: text('Plywood', 'Contrachapado') },
      { value: 'structural-1-plywood', label: text('Structural I plywood', 'Contrachapado Structural I') },
      { value: 'steel', label: text('Steel strap', 'Placa de acero') },
    ],
    label: text('It is made of', 'Es de'),
  }),
  sideSpecies: {
    ...speciesField(text('Its species, if not the same', 'Su especie, si es otra')),
    needed: 'optional',
    showWhen: { input: 'sideMaterial', is: ['sawn'] },
    assumes: assume(text('Both pieces are of one species.', 'Ambas piezas son de una especie.')),
  },
  mainSpecies: {
    ...speciesField(text('Species of the piece that holds the point', 'Especie de la pieza donde entra la punta')),
    needed: { when: { input: 'G', known: false } },
  },
  G: number({
    unit: 'factor',
    min: 0.3,
    max: 0.75,
    needed: 'optional',
    showWhen: { input: 'mainSpecies', known: false },
    label: text('Or: specific gravity', 'O: gravedad específica'),
  }),
  penetrationIn: length({
    unit: 'in',
    min: 0,
    max: 8,
    needed: 'optional',
    assumes: assume(
      text(
        'The nail is driven home and nothing lies between the pieces: it goes in by its length less the thickness.',
        'El clavo está bien hundido y no hay nada en medio: entra su largo menos el grueso.',
      ),
    ),
    label: text('Penetration, point included', 'Penetración, con la punta'),
    howToMeasure: text(
      'Into the piece that holds the point; less whatever lies between. Left out: length less thickness.',
      'En la pieza donde entra la punta, sin lo que haya en medio. Si falta: largo menos grueso.',
    ),
  }),
  loadDuration: loadDurationField,
  toeNailed: flag({
    default: false,
    assumes: assume(text('It is driven straight.', 'Está clavado derecho.')),
    label: text('Toe-nailed?', '¿Clavado en ángulo?'),
  }),
  demandLb: demandField(text('Load across the nail, if known', 'Carga a través del clavo, si se sabe')),
} as const;

type NailPartials = Partials<typeof inputs>;

/** Nails that contradict themselves: two sizes, two gravities, deeper than they are long, or toe-nailed through a panel. */
export function nailIssues(given: NailPartials): InputIssue[] {
  const { nail, diameterIn, penetrationIn, sideMaterial } = given;
  const issues: InputIssue[] = [];
  if (nail !== undefined && diameterIn !== undefined && diameterIn !== NAIL_DIAMETER_IN[nail]) {
    const is = `${NAIL_DIAMETER_IN[nail]} in`;
    issues.push(
      refuse(
        ['diameterIn'],
        `${diameterIn} in`,
        text(`${is}, as a ${nail} nail is`, `${is}, como el clavo ${nail}`),
        text(
          `A ${nailLabel(nail).en} nail has no shank of ${diameterIn} in.`,
          `Un clavo ${nailLabel(nail).es} no tiene un diámetro de ${diameterIn} in.`,
        ),
      ),
    );
  }
  const { G, mainSpecies } = given;
  if (G !== undefined && mainSpecies !== undefined && G !== SPECIFIC_GRAVITY[mainSpecies].gravity) {
    const own = SPECIFIC_GRAVITY[mainSpecies].gravity;
    issues.push(
      refuse(
        ['G'],
        `${G}`,
        text(`${own}, as its species (mainSpecies) has`, `${own}, la de su especie (mainSpecies)`),
        text(
          `The species has a specific gravity of ${own}, not ${G}: give one of the two.`,
          `La especie tiene una gravedad específica de ${own}, no ${G}: dé una de las dos.`,
        ),
      ),
    );
  }
  issues.push(
    ...refuseLonger(['penetrationIn'], {
      what: inputs.penetrationIn.label,
      came: penetrationIn,
      most: nail === undefined ? given.lengthIn : NAIL_LENGTH_IN[nail],
      ofWhat: text('the length of the nail', 'el largo del clavo'),
    }),
  );
  if (given.toeNailed && sideMaterial !== undefined && sideMaterial !== 'sawn')
    issues.push(
      refuse(
        ['toeNailed'],
        `true, ${sideMaterial}`,
        text('true only with sawn', 'true solo con sawn'),
        text('Only lumber is toe-nailed.', 'Solo la madera aserrada se clava en ángulo.'),
      ),
    );
  return issues;
}
