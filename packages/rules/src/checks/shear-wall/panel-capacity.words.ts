import { atMost, compareNumbers, decimal, type Reason, reasonThat, type Text, text } from '../../kernel/index.ts';
import {
  ASPECT_LIMIT,
  FULL_STRENGTH_ASPECT,
  type ShearWallEdition,
  stiffnessShare,
  WIDE_FRAMING_10D_SPACING_IN,
  WIDE_FRAMING_SPACING_IN,
} from '../../standards/sdpws-common/edition.ts';
import {
  FIELD_LIMIT_IN,
  type PanelRow,
  STUD_LIMIT_IN,
  THIN_FIELD_LIMIT_IN,
  thinPanelRow,
} from '../../standards/sdpws-common/shear-walls.data.ts';
import { UNBLOCKED_ASPECT_LIMIT, UNBLOCKED_HEIGHT_LIMIT_FT } from '../../standards/sdpws-common/unblocked.data.ts';
import { insideFactorOf, type PanelInputs, type Strength } from './panel-capacity.strength.ts';

const plf = (value: number, digits = 1): string => `${decimal(value, digits)} plf`;

function barWords(given: PanelInputs, { bar, aspect }: Strength): Text | undefined {
  const times = compareNumbers(aspect, given.blocked ? ASPECT_LIMIT : UNBLOCKED_ASPECT_LIMIT, 'at-most', decimal, 2);
  switch (bar) {
    case 'aspect':
      return text(
        `The wall is ${times.measured.en} times as high as long; over ${times.limit} it does not count as a shear wall.`,
        `La pared es ${times.measured.es} veces más alta que larga; con más de ${times.limit} no cuenta como pared de corte.`,
      );
    case 'height':
      return text(
        `Unblocked walls count up to ${UNBLOCKED_HEIGHT_LIMIT_FT} ft high.`,
        `Sin bloqueo cuentan paredes de hasta ${UNBLOCKED_HEIGHT_LIMIT_FT} ft de alto.`,
      );
    case 'studs':
      return text(
        `The table stops at studs ${STUD_LIMIT_IN} in apart.`,
        `La tabla llega a pies derechos cada ${STUD_LIMIT_IN} in.`,
      );
    case 'field-nails':
      return text(
        `The unblocked table stops at field nails ${FIELD_LIMIT_IN} in apart.`,
        `La tabla sin bloqueo llega a clavos interiores cada ${FIELD_LIMIT_IN} in.`,
      );
    case undefined:
      return undefined;
  }
}

/** What decided, in words. */
export function capacityReasons(given: PanelInputs, strength: Strength): Reason[] {
  const barred = barWords(given, strength);
  if (barred) return [reasonThat(false, barred)];
  const { demandPlf } = given;
  const { designPlf, nominalPlf } = strength;
  if (demandPlf === undefined)
    return [
      text(
        `The wall is worth ${plf(designPlf)}, from ${plf(nominalPlf)} nominal.`,
        `La pared vale ${plf(designPlf)}, de ${plf(nominalPlf)} nominales.`,
      ),
      text('Ask the engineer what it must carry.', 'Pregunte al ingeniero cuánto debe resistir.'),
    ];
  const { measured, limit } = compareNumbers(demandPlf, designPlf, 'at-most', plf, 1);
  return [
    reasonThat(
      atMost(demandPlf, designPlf),
      text(
        `The wall is worth ${limit}, from ${plf(nominalPlf)} nominal; it is asked for ${measured.en}.`,
        `La pared vale ${limit}, de ${plf(nominalPlf)} nominales; se le piden ${measured.es}.`,
      ),
    ),
  ];
}

function wideFraming(given: PanelInputs, edition: ShearWallEdition, { nominalPlf }: Strength): Text | undefined {
  const { edgeSpacingIn, nail } = given;
  const { overPlf } = edition.wideFraming;
  const close =
    atMost(edgeSpacingIn, WIDE_FRAMING_SPACING_IN) ||
    (nail === '10d' && atMost(edgeSpacingIn, WIDE_FRAMING_10D_SPACING_IN));
  if (close)
    return text(
      'Nails this close ask for 3x framing where panels meet, nails staggered.',
      'Clavos tan juntos piden madera 3x donde se unen los paneles, con clavos alternados.',
    );
  if (atMost(nominalPlf, overPlf)) return undefined;
  return text(
    `Over ${overPlf} plf nominal, Seismic Design Categories D to F ask for 3x framing where panels meet.`,
    `Con más de ${overPlf} plf nominales, las categorías sísmicas D a F piden madera 3x donde se unen los paneles.`,
  );
}

function fieldNails({ fieldSpacingIn, studSpacingIn = 0, thickness }: PanelInputs): Text | undefined {
  const thin = (thickness === '3/8' || thickness === '7/16') && !(studSpacingIn < STUD_LIMIT_IN);
  const limitIn = thin ? THIN_FIELD_LIMIT_IN : FIELD_LIMIT_IN;
  if (fieldSpacingIn === undefined || atMost(fieldSpacingIn, limitIn)) return undefined;
  return text(
    `Field nails may be ${limitIn} in apart here (from memory, confirm); these are wider.`,
    `Aquí los clavos interiores van hasta cada ${limitIn} in (de memoria, confirme); estos van más separados.`,
  );
}

function footnote(given: PanelInputs, strength: Strength): Text | undefined {
  const thicker = thinPanelRow(given.grade, given.thickness, given.nail);
  if (!thicker || strength.asThicker || !given.blocked) return undefined;
  return text(
    'A footnote, from memory, lets this thin panel count as 15/32 on close studs; it is not counted here.',
    'Una nota, de memoria, deja contar este panel delgado como 15/32 con pies derechos juntos; aquí no se cuenta.',
  );
}

function narrow(strength: Strength): Text | undefined {
  const { aspect, aspectFactor, designPlf } = strength;
  if (!(aspect > FULL_STRENGTH_ASPECT) || designPlf === 0) return undefined;
  const shared = stiffnessShare(aspect);
  if (shared === aspectFactor) return undefined;
  const lower = plf((designPlf / aspectFactor) * shared);
  return text(
    `Narrow-wall rules differ by edition; where a line shares by capacity this wall is worth ${lower}.`,
    `Las reglas de paredes angostas cambian por edición; si la línea se reparte por capacidad, esta pared vale ${lower}.`,
  );
}

function insideUnknown(given: PanelInputs, edition: ShearWallEdition): Text | undefined {
  const factor = insideFactorOf(given, edition);
  if (factor === 1 || given.holdDownInsideFace !== undefined) return undefined;
  return text(
    `With the hold-down on the inside of the end post, only ${factor} of this counts.`,
    `Con el anclaje en la cara interior del poste solo cuenta ${factor} de esto.`,
  );
}

/** What else the wall must satisfy, and where editions disagree. */
export function capacityCautions(
  given: PanelInputs,
  edition: ShearWallEdition,
  strength: Strength,
  row: PanelRow,
): Text[] {
  const bite = text(
    `Nails must reach ${row.penetrationIn} in into the framing.`,
    `Los clavos deben entrar ${row.penetrationIn} in en la madera.`,
  );
  const lrfd =
    given.method === 'lrfd' && given.load === 'seismic'
      ? text(
          'LRFD earthquake values fell in 2021: 0.50 of nominal, 0.80 of a smaller nominal before.',
          'Los valores LRFD por sismo bajaron en 2021: 0.50 del nominal; antes 0.80 de un nominal menor.',
        )
      : undefined;
  return [
    bite,
    wideFraming(given, edition, strength),
    fieldNails(given),
    footnote(given, strength),
    narrow(strength),
    insideUnknown(given, edition),
    lrfd,
  ].filter((caution) => caution !== undefined);
}
