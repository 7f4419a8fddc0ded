import type { DocumentItem } from '@underlath/contract';
import {
  type Check,
  type Field,
  type Fields,
  formatLength,
  joinTexts,
  type Outcome,
  SEVERITY_CONSEQUENCE,
  type Text,
  text,
  unsourcedCautions,
} from '@underlath/rules';
import { findCheck } from '@underlath/rules/all-checks';
import { toWord } from '../../shared/enum-words.ts';
import type { FindingRecord } from './change-orders.repository.ts';

const nothing = text('', '');
const measuredMost = 40;

/** One finding as the client reads it, without its share of the price. */
export function toItem(
  finding: FindingRecord,
  repairs: readonly Text[],
  checkedBy: string,
): Omit<DocumentItem, 'shareCents'> {
  const judgment = finding.judgments[0];
  const severity = toWord(finding.severity ?? 'record');
  const check = findCheck(judgment?.checkId ?? finding.checkId);
  const outcome = judgment?.outcome as unknown as Outcome | undefined;
  // Defaults are filled in; inputs that an older version of the check took are left out rather than misread.
  const inputs = readable(check, judgment?.inputs) ?? {};
  return {
    findingId: finding.id,
    number: finding.number,
    title: finding.title,
    place: toPlace(finding),
    extent: finding.extent as DocumentItem['extent'],
    severity,
    consequence: SEVERITY_CONSEQUENCE[severity],
    found: check && outcome ? check.client.found(inputs, outcome) : nothing,
    why: check?.client.why ?? nothing,
    ifNot: check?.client.ifNot ?? nothing,
    repairs: [...repairs],
    cautions: outcome ? [...ownersCautions(outcome), ...assumedWords(outcome)] : [],
    sources: [...(outcome?.sources ?? [])],
    measured: check && outcome ? measuredOf(check, inputs, outcome) : [],
    checkedBy,
    checkedAt: (judgment?.judgedAt ?? finding.createdAt).toISOString(),
    seenAt: finding.seenAt.toISOString(),
    rulesVersion: judgment?.rulesVersion ?? '',
    photos: finding.photos.flatMap(({ photo }) => {
      const { id, sha256, viewSha256, caption, stage } = photo;
      return viewSha256 ? [{ id, sha256, viewSha256, caption, stage: toWord(stage) }] : [];
    }),
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

function toPlace({ location }: FindingRecord): DocumentItem['place'] {
  const { id, name, kind, widthIn, heightIn, memberDepthIn, framingSpacingIn, openings } = location;
  return {
    locationId: id,
    name,
    kind: toWord(kind),
    widthIn,
    // A beam is drawn as high as it is deep.
    heightIn: heightIn ?? (kind === 'beamLine' ? memberDepthIn : null),
    framingSpacingIn,
    openings: openings as DocumentItem['place']['openings'],
  };
}

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
