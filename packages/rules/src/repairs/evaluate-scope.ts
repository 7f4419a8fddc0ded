import { type Text, text } from '../kernel/index.ts';
import { type Ground, onTicks, type Rect, rightIn, topIn } from '../places/extents.ts';
import type { FindingTakeOff } from './drawn.ts';
import type { Existing } from './existing.ts';
import type { NailSchedule } from './panel-layout.ts';
import { inOrder, OrderLoopError } from './schedule.ts';
import { type Hours, planScope, type Scope, type ScopeJob } from './scope.ts';
import { findRepair, takeOff } from './take-off.ts';
import { ASSUMED_SCHEDULE } from './unite.ts';

export interface ScopeFinding {
  readonly id: string;
  readonly repair: string;
  readonly extents: readonly Rect[];
  /** Amounts by operation id, and `edgeSpacingIn`, `fieldSpacingIn` of the approved nailing schedule. */
  readonly quantities?: Readonly<Record<string, number>> | undefined;
  /** Findings whose own work comes first. */
  readonly after?: readonly string[] | undefined;
}

export interface ScopeRequest {
  readonly location: Ground & { readonly existing?: readonly Existing[] | undefined };
  readonly findings: readonly ScopeFinding[];
  readonly declined?: readonly string[] | undefined;
  readonly crewSize: number;
  readonly hoursPerDay: number;
}

export interface ScopeIssue {
  readonly path: readonly (string | number)[];
  readonly message: Text;
}

/** A request no scope can be made of; each issue says where, what came and what is allowed. */
export class ScopeError extends Error {
  override readonly name = 'ScopeError';
  readonly issues: readonly ScopeIssue[];
  constructor(issues: readonly ScopeIssue[]) {
    super(issues.map((issue) => issue.message.en).join(' '));
    this.issues = issues;
  }
}

const SPACINGS = ['edgeSpacingIn', 'fieldSpacingIn'] as const;

function extentIssues(rect: Rect, ground: Ground, path: readonly (string | number)[]): ScopeIssue[] {
  const far = [
    ['xIn', 'widthIn', rightIn(rect), ground.widthIn],
    ['yIn', 'heightIn', topIn(rect), ground.heightIn],
  ] as const;
  const negative = (['xIn', 'yIn', 'widthIn', 'heightIn'] as const).flatMap((side): ScopeIssue[] => {
    const least = side === 'xIn' || side === 'yIn' ? rect[side] >= 0 : rect[side] > 0;
    if (least) return [];
    const allowed = side === 'xIn' || side === 'yIn' ? ['0 or more', '0 o más'] : ['above 0', 'más de 0'];
    return [
      {
        path: [...path, side],
        message: text(
          `${side}: got ${rect[side]}; allowed is ${allowed[0]}.`,
          `${side}: llegó ${rect[side]}; se permite ${allowed[1]}.`,
        ),
      },
    ];
  });
  const outside = far.flatMap(([, side, endIn, mostIn]): ScopeIssue[] =>
    endIn <= mostIn
      ? []
      : [
          {
            path: [...path, side],
            message: text(
              `The rectangle ends at ${endIn} in; the place ends at ${mostIn} in.`,
              `El rectángulo termina en ${endIn} in; el lugar termina en ${mostIn} in.`,
            ),
          },
        ],
  );
  return [...negative, ...outside];
}

function quantityIssues({ repair, quantities = {} }: ScopeFinding, path: readonly (string | number)[]): ScopeIssue[] {
  const operations = findRepair(repair)?.steps.map((step) => step.operation) ?? [];
  const names = [...operations, ...SPACINGS];
  return Object.entries(quantities).flatMap(([name, value]): ScopeIssue[] => {
    const spacing = SPACINGS.some((one) => one === name);
    if (!names.includes(name))
      return [
        {
          path: [...path, name],
          message: text(
            `"${repair}" has no amount called "${name}"; it has ${names.join(', ')}.`,
            `"${repair}" no tiene "${name}"; tiene ${names.join(', ')}.`,
          ),
        },
      ];
    if (Number.isFinite(value) && value >= (spacing ? 1 : 0)) return [];
    const least = spacing ? 1 : 0;
    return [
      {
        path: [...path, name],
        message: text(
          `${name}: got ${value}; allowed is ${least} or more.`,
          `${name}: llegó ${value}; se permite ${least} o más.`,
        ),
      },
    ];
  });
}

function findingIssues(finding: ScopeFinding, at: number, { location, findings }: ScopeRequest): ScopeIssue[] {
  const path = ['findings', at];
  const ids = findings.map((one) => one.id);
  const twice = ids.indexOf(finding.id) < at;
  const strangers = (finding.after ?? []).flatMap((id, order): ScopeIssue[] =>
    ids.includes(id) ? [] : [{ path: [...path, 'after', order], message: unknownFinding(id) }],
  );
  return [
    ...(twice
      ? [
          {
            path: [...path, 'id'],
            message: text(`The id "${finding.id}" is there twice.`, `El id "${finding.id}" está dos veces.`),
          },
        ]
      : []),
    ...(findRepair(finding.repair)
      ? quantityIssues(finding, [...path, 'quantities'])
      : [
          {
            path: [...path, 'repair'],
            message: text(`There is no repair "${finding.repair}".`, `No hay reparación "${finding.repair}".`),
          },
        ]),
    ...finding.extents.flatMap((rect, order) => extentIssues(rect, location, [...path, 'extents', order])),
    ...strangers,
  ];
}

const unknownFinding = (id: string): Text =>
  text(`There is no finding "${id}" in this request.`, `No hay hallazgo "${id}" en esta solicitud.`);

function loopIssues({ findings }: ScopeRequest): ScopeIssue[] {
  try {
    inOrder(findings.map(({ id, after = [] }) => ({ id, after })));
    return [];
  } catch (error) {
    if (!(error instanceof OrderLoopError)) throw error;
    const [first] = error.ids;
    const circle = [...error.ids, first].join(' > ');
    const message = text(`These findings wait for each other: ${circle}.`, `Estos hallazgos se esperan: ${circle}.`);
    return [{ path: ['findings', findings.findIndex((one) => one.id === first), 'after'], message }];
  }
}

function issuesOf(request: ScopeRequest): ScopeIssue[] {
  const found = request.findings.flatMap((finding, at) => findingIssues(finding, at, request));
  const ids = request.findings.map((one) => one.id);
  const declined = (request.declined ?? []).flatMap((id, at): ScopeIssue[] =>
    ids.includes(id) ? [] : [{ path: ['declined', at], message: unknownFinding(id) }],
  );
  return [...found, ...declined, ...(found.length === 0 ? loopIssues(request) : [])];
}

function scheduleOf(quantities: Readonly<Record<string, number>>): { schedule?: NailSchedule } {
  const { edgeSpacingIn, fieldSpacingIn } = quantities;
  if (edgeSpacingIn === undefined && fieldSpacingIn === undefined) return {};
  return {
    schedule: {
      edgeSpacingIn: edgeSpacingIn ?? ASSUMED_SCHEDULE.edgeSpacingIn,
      fieldSpacingIn: fieldSpacingIn ?? ASSUMED_SCHEDULE.fieldSpacingIn,
    },
  };
}

const HERE = 'here';

function takeOffOf({ id, repair, extents, quantities = {} }: ScopeFinding): FindingTakeOff {
  const lines = takeOff(repair, { inputs: {}, outcome: { values: {} } }, quantities);
  return { finding: id, place: HERE, lines, extents: extents.map(onTicks), ...scheduleOf(quantities) };
}

/**
 * The repair scope of one place, everything given. Inches, hours; a crew of 1 or more. Throws ScopeError naming every
 * rectangle outside the place, id given twice, unknown name, or circle in the order.
 */
export function evaluateScope(request: ScopeRequest, hoursOf: (operation: string) => Hours | undefined): Scope {
  const issues = issuesOf(request);
  if (issues.length > 0) throw new ScopeError(issues);
  try {
    return planScope(jobOf(request, hoursOf));
  } catch (error) {
    if (!(error instanceof OrderLoopError)) throw error;
    throw new ScopeError([stepLoop(request, error)]);
  }
}

/** Work that two findings share can close a circle that their own order leaves open. */
function stepLoop({ findings }: ScopeRequest, { ids }: OrderLoopError): ScopeIssue {
  const circle = [...ids, ids[0]].join(' > ');
  const message = text(
    `In this order these steps wait for each other: ${circle}.`,
    `En este orden se esperan: ${circle}.`,
  );
  return { path: ['findings', findings.findIndex((one) => one.after?.length), 'after'], message };
}

function jobOf(request: ScopeRequest, hoursOf: ScopeJob['hoursOf']): ScopeJob {
  return {
    ground: request.location,
    existing: request.location.existing ?? [],
    takeOffs: request.findings.map(takeOffOf),
    order: request.findings.flatMap(({ id, after = [] }) => after.map((before) => [id, before] as const)),
    declined: request.declined ?? [],
    crewSize: request.crewSize,
    hoursPerDay: request.hoursPerDay,
    hoursOf,
  };
}
