import { burdenPctOfParts, type CostBook, type CostItem, type Trade } from './cost-book.ts';

type Hours = readonly [low: number, likely: number, high: number];

/** One invented item. Hours per unit; material in cents per unit. */
function item(
  operation: string,
  unit: CostItem['unit'],
  trade: string,
  [low, likely, high]: Hours,
  materialCentsPerUnit: number,
  more: Partial<CostItem> = {},
): CostItem {
  return {
    operation,
    unit,
    trade,
    hoursPerUnit: { low, likely, high },
    materialCentsPerUnit,
    wastePct: 10,
    wholeUnits: unit === 'each',
    materialTaxPct: 8,
    equipmentCentsPerUnit: 0,
    subcontractCentsPerUnit: 0,
    otherCentsPerUnit: 0,
    minimumCents: 0,
    ...more,
  };
}

/** Invented but for the 7.65%, which is 6.2% and 1.45% of BURDEN_SOURCE. */
const BURDEN = [
  { name: 'Social Security and Medicare', pct: 7.65 },
  { name: 'Unemployment insurance', pct: 3.35 },
  { name: 'Workers’ compensation', pct: 15 },
  { name: 'Benefits', pct: 12 },
];

const trade = (id: string, name: string, wageCentsPerHour: number): Trade => ({
  id,
  name,
  wageCentsPerHour,
  burdenPct: burdenPctOfParts(BURDEN),
  burdenParts: BURDEN.map((part) => ({ ...part })),
});

const NO_WASTE = { wastePct: 0 };

/** Invented values to start from, one for every operation of the repair templates. Replace them with time cards. */
export const starterCostBook: CostBook = {
  currency: 'USD',
  placeholder: true,
  notice: {
    en: 'Every value here is an invented placeholder. Replace it with your own time cards and invoices before you price.',
    es: 'Todos los valores son inventados. Cámbielos por sus propios registros y facturas antes de cotizar.',
  },
  trades: [
    trade('carpenter', 'Carpenter', 3800),
    trade('laborer', 'Laborer', 2600),
    trade('lead-certified', 'Lead-certified renovator', 4400),
  ],
  items: [
    item('engineer-letter', 'each', 'carpenter', [0.5, 1, 2], 0, { ...NO_WASTE, fee: 'engineer' }),
    item('specialist-visit', 'each', 'carpenter', [0.5, 1, 2], 0, { ...NO_WASTE, subcontractCentsPerUnit: 48_000 }),
    item('permit-revision', 'each', 'carpenter', [1, 2, 4], 0, { ...NO_WASTE, fee: 'permit' }),
    item('lead-safe-setup', 'each', 'lead-certified', [2, 3, 6], 8_500, NO_WASTE),
    item('lead-safe-cleanup', 'each', 'lead-certified', [2, 3, 5], 4_500, NO_WASTE),
    item('protect-place', 'each', 'laborer', [0.5, 1, 2], 2_500, NO_WASTE),
    item('dust-control', 'each', 'laborer', [0.5, 1, 2], 3_500, NO_WASTE),
    item('open-finish', 'sf', 'laborer', [0.02, 0.04, 0.08], 0, NO_WASTE),
    item('shore-load', 'each', 'carpenter', [3, 5, 10], 9_000, { ...NO_WASTE, equipmentCentsPerUnit: 6_000 }),
    item('release-shoring', 'each', 'carpenter', [0.5, 1, 2], 0, NO_WASTE),
    item('remove-member', 'lf', 'carpenter', [0.1, 0.2, 0.4], 0, NO_WASTE),
    item('remove-panel', 'sf', 'carpenter', [0.01, 0.02, 0.04], 0, NO_WASTE),
    item('remove-hanger', 'each', 'carpenter', [0.2, 0.35, 0.75], 0, NO_WASTE),
    item('replace-member', 'lf', 'carpenter', [0.15, 0.3, 0.6], 420),
    item('sister-member', 'lf', 'carpenter', [0.08, 0.15, 0.3], 480),
    item('treat-wood', 'lf', 'laborer', [0.03, 0.06, 0.12], 60),
    item('find-water', 'each', 'carpenter', [1, 2, 6], 2_500, NO_WASTE),
    item('clean-mold', 'sf', 'laborer', [0.08, 0.15, 0.3], 90, NO_WASTE),
    item('panel-blocking', 'lf', 'carpenter', [0.1, 0.2, 0.35], 210),
    item('dry-wood', 'each', 'laborer', [1, 2, 4], 0, { ...NO_WASTE, equipmentCentsPerUnit: 14_000 }),
    item('seat-support', 'each', 'carpenter', [2, 4, 8], 7_500, NO_WASTE),
    item('shim-level', 'each', 'carpenter', [0.3, 0.75, 1.5], 600, NO_WASTE),
    item('coupler-rod', 'each', 'carpenter', [1, 1.75, 4], 3_800, { ...NO_WASTE, minimumCents: 18_000 }),
    item('anchor-replace', 'each', 'carpenter', [1.5, 2.5, 5], 4_800, { ...NO_WASTE, equipmentCentsPerUnit: 3_500 }),
    item('anchor-bolt', 'each', 'carpenter', [0.5, 0.9, 1.75], 1_900, { ...NO_WASTE, equipmentCentsPerUnit: 1_200 }),
    item('plate-washer', 'each', 'carpenter', [0.15, 0.25, 0.5], 650, NO_WASTE),
    item('hold-down-new', 'each', 'carpenter', [1.5, 2.5, 5], 9_500, { ...NO_WASTE, equipmentCentsPerUnit: 3_500 }),
    item('plate-tie', 'each', 'carpenter', [0.4, 0.75, 1.5], 1_400, NO_WASTE),
    item('tie-nails', 'each', 'carpenter', [0.01, 0.015, 0.03], 12, { wastePct: 20 }),
    item('positive-connection', 'each', 'carpenter', [0.4, 0.75, 1.5], 2_200, NO_WASTE),
    item('hanger-new', 'each', 'carpenter', [0.4, 0.75, 1.5], 1_600, NO_WASTE),
    item('hanger-nails', 'each', 'carpenter', [0.01, 0.02, 0.04], 12, { wastePct: 20 }),
    item('panel-nails', 'each', 'carpenter', [0.005, 0.01, 0.02], 8, { wastePct: 20 }),
    item('panel-new', 'sf', 'carpenter', [0.02, 0.035, 0.06], 145),
    item('panel-staples', 'each', 'carpenter', [0.004, 0.008, 0.015], 5, { wastePct: 20 }),
    item('inspection-hold', 'each', 'carpenter', [0.5, 1, 3], 0, { ...NO_WASTE, fee: 'inspection' }),
    item('close-finish', 'sf', 'carpenter', [0.06, 0.12, 0.2], 240),
    item('haul-debris', 'each', 'laborer', [0.5, 1, 2], 0, { ...NO_WASTE, fee: 'disposal' }),
  ],
  fees: [
    { id: 'engineer', name: 'Engineer’s letter', kind: 'engineer', cents: 65_000 },
    { id: 'permit', name: 'Permit revision', kind: 'permit', cents: 18_000 },
    { id: 'inspection', name: 'Inspection before cover', kind: 'inspection', cents: 9_500 },
    { id: 'disposal', name: 'Disposal of a load', kind: 'disposal', cents: 7_500 },
    { id: 'change-order-admin', name: 'Change order paperwork', kind: 'other', cents: 8_500 },
  ],
  overheadPct: 18,
  profitPct: 10,
  stacking: 'stacked',
};
