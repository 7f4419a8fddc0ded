import {
  type Check,
  type Field,
  type Fields,
  formatLength,
  joinTexts,
  type Outcome,
  SEVERITY_CONSEQUENCE,
  type Severity,
  type Text,
  text,
  unsourcedCautions,
} from '../kernel/index.ts';
import type { FindingState } from '../schemas/states.ts';
import type { DocumentItem } from './document/change-order-document.ts';
import type { PriceableFinding } from './finding.ts';

/** A finding as far as a letter tells it. */
export interface LetterFinding extends PriceableFinding {
  readonly title: string;
  readonly state: FindingState;
  /** Null before it was judged. */
  readonly severity: Severity | null;
  /** The check that judged it, or would; undefined where the rules no longer have it. */
  readonly check: Check | undefined;
  /** The title of the check it was recorded with. */
  readonly ownTitle: Text | undefined;
  /** How its place is drawn beside the words. */
  readonly drawnPlace: DocumentItem['place'];
  readonly checkedBy: string;
  readonly checkedAt: string;
  readonly seenAt: string;
  readonly rulesVersion: string;
  /** Those that can be shown. */
  readonly photos: DocumentItem['photos'];
  /** Photos that are still being prepared. */
  readonly waitingPhotos: number;
  /** A photo of work, or a repair, shows that it began. */
  readonly hasBegun: boolean;
}

const nothing = text('', '');
const measuredMost = 40;

/** One finding as the client reads it, without its share of the price. */
export function toItem(finding: LetterFinding, repairs: readonly Text[]): Omit<DocumentItem, 'shareCents'> {
  const { id, number, title, check, judged, extent, drawnPlace, photos } = finding;
  const severity = finding.severity ?? 'record';
  // Defaults are filled in; inputs that an older version of the check took are left out rather than misread.
  const inputs = readable(check, judged?.inputs) ?? {};
  const outcome = judged?.outcome;
  return {
    findingId: id,
    number,
    title,
    place: drawnPlace,
    extent,
    severity,
    consequence: SEVERITY_CONSEQUENCE[severity],
    found: check && outcome ? check.client.found(inputs, outcome) : nothing,
    why: check?.client.why ?? nothing,
    ifNot: check?.client.ifNot ?? nothing,
    repairs: [...repairs],
    cautions: outcome ? [...ownersCautions(outcome), ...assumedWords(outcome)] : [],
    sources: [...(outcome?.sources ?? [])],
    measured: check && outcome ? measuredOf(check, inputs, outcome) : [],
    checkedBy: finding.checkedBy,
    checkedAt: finding.checkedAt,
    seenAt: finding.seenAt,
    rulesVersion: finding.rulesVersion,
    photos,
  };
}

/** An owner is told once that rules are still to be confirmed; the list of rules says of each how it was read. */
function ownersCautions({ cautions, sources }: Outcome): Text[] {
  const ofRules = new Set(unsourcedCautions(sources).map(({ en }) => en));
  const rest = cautions.filter(({ en }) => !ofRules.has(en));
  return rest.length < cautions.length ? [...rest, CONFIRM_RULES] : rest;
}
const CONFIRM_RULES = text(
  'Some of the rules we used still have to be confirmed. The list of rules says which.',
  'Algunas de las reglas que usamos aún se deben confirmar. La lista de reglas dice cuáles.',
);

/** Inputs as their check reads them today, or undefined when it no longer does. */
function readable(check: Check | undefined, inputs: unknown): Readonly<Record<string, unknown>> | undefined {
  const read = check?.read(inputs ?? {});
  return read?.issues.length === 0 ? read.inputs : undefined;
}

type Measured = DocumentItem['measured'][number];

/** What the judgment took for granted, as a caution of the document; one sentence for all of it. */
function assumedWords(outcome: Outcome | undefined): Text[] {
  const taken = joinTexts((outcome?.assumed ?? []).map((one) => one.text));
  return taken.en === '' ? [] : [text(`Not said, so taken as: ${taken.en}`, `No se dijo; se toma: ${taken.es}`)];
}

function measuredOf(check: Check, inputs: Readonly<Record<string, unknown>>, outcome: Outcome): Measured[] {
  const left: Measured[] =
    outcome.remaining === null
      ? []
      : [
          {
            label: text(
              'By this check, the part of its strength that may be counted',
              'Parte de su resistencia que se puede contar según esta revisión',
            ),
            value: `${Math.round(outcome.remaining * 100)}%`,
          },
        ];
  return [...measuredFields(check.inputs, inputs).slice(0, measuredMost), ...left];
}

/** Lengths, numbers and counts as they were typed; one below zero by the name it has then, without a sign. */
export function measuredFields(fields: Fields, values: Readonly<Record<string, unknown>>, of = nothing): Measured[] {
  return Object.entries(fields).flatMap(([name, field]) => {
    const value = values[name];
    if (value === undefined || value === null) return [];
    const below = field.kind === 'length' && Number(value) < 0 ? field.belowZero : undefined;
    const own = below ?? field.label;
    const label = of.en ? text(`${of.en}: ${own.en}`, `${of.es}: ${own.es}`) : own;
    if (field.kind === 'group') return measuredFields(field.fields, value as Record<string, unknown>, label);
    if (field.kind === 'list') {
      return (value as Record<string, unknown>[]).flatMap((item, at) =>
        measuredFields(field.item, item, nameOf(item, label, at)),
      );
    }
    const shown = showMeasure(field, below ? -Number(value) : value);
    return shown === undefined ? [] : [{ label, value: shown }];
  });
}

function nameOf(item: Record<string, unknown>, label: Text, at: number): Text {
  const name = typeof item.name === 'string' ? item.name : undefined;
  return name ? text(name, name) : text(`${label.en} ${at + 1}`, `${label.es} ${at + 1}`);
}

/** As they follow their figure; a factor has none. */
const unitSigns: Readonly<Record<string, string>> = { pct: '%', factor: '', sf: ' sq ft', in2: ' sq in', F: ' °F' };

function showMeasure(field: Field, value: unknown): string | undefined {
  if (typeof value !== 'number') return undefined;
  if (field.kind === 'length') {
    return formatLength(field.unit === 'ft' ? value * 12 : value, { denominator: field.denominator ?? 16 });
  }
  if (field.kind === 'number') return `${value}${unitSigns[field.unit] ?? ` ${field.unit}`}`;
  return field.kind === 'count' ? String(value) : undefined;
}
