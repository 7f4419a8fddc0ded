import type { ScopeAnswer, ScopeRequestBody } from '@underlath/contract';
import {
  type CostBook,
  evaluateScope,
  type Hours,
  type Locale,
  type Scope,
  ScopeError,
  type ScopeIssue,
  say,
  type Text,
  text,
} from '@underlath/rules';
import { ProblemError } from '../../platform/problem-error.ts';

/** The repair scope of a place, for anyone who asks. It keeps nothing. */
export class ScopesService {
  /** @param starter the invented book whose hours stand in until the caller gives hours of their own */
  constructor(private readonly starter: CostBook) {}

  /** @throws ProblemError `invalid-input` with a pointer for everything that does not fit */
  evaluate({ hoursPerUnit, ...request }: ScopeRequestBody, locale: Locale): ScopeAnswer {
    const given = new Map<string, Hours>(Object.entries(hoursPerUnit));
    const started = (operation: string) => this.starter.items.find((item) => item.operation === operation);
    try {
      const scope = evaluateScope(
        request,
        (operation) => given.get(operation) ?? started(operation)?.hoursPerUnit ?? undefined,
      );
      const invented = scope.operations.some(({ operation }) => !given.has(operation));
      return toAnswer(scope, locale, invented);
    } catch (error) {
      throw explain(error, locale);
    }
  }
}

const SCREENING = text(
  'Amounts for a price, not a design. A licensed engineer and the building official decide about the structure, and local codes govern.',
  'Cantidades para un precio, no un diseño. Un ingeniero con licencia y el oficial de construcción deciden sobre la estructura, y rigen los códigos locales.',
);
const INVENTED = text(
  'Hours come from invented starter values; give your own under hoursPerUnit.',
  'Las horas vienen de valores iniciales inventados; dé las suyas en hoursPerUnit.',
);
const SHORING = text(
  'Shore before any wood that carries is touched, under the direction of a qualified person.',
  'Apuntale antes de tocar madera que carga, bajo la dirección de una persona calificada.',
);

function cautionsOf(scope: Scope, invented: boolean): Text[] {
  const shored = scope.operations.some(({ operation }) => operation === 'shore-load');
  return [...(shored ? [SHORING] : []), SCREENING, ...(invented ? [INVENTED] : [])];
}

function toAnswer(scope: Scope, locale: Locale, invented: boolean): ScopeAnswer {
  const words = (one: Text) => say(one, locale);
  return {
    operations: scope.operations.map(({ area, members, ...one }) => ({
      ...one,
      title: words(one.title),
      how: words(one.how),
      for: [...one.for],
      after: [...one.after],
      ...(area && { area: [...area] }),
      ...(members && { members: members.map(words) }),
    })),
    unions: scope.unions,
    naive: scope.naive,
    totalHours: scope.totalHours,
    workingDays: scope.workingDays,
    criticalPath: [...scope.criticalPath],
    shares: [...scope.shares],
    conflicts: scope.conflicts.map(({ finding, why }) => ({ finding, why: words(why) })),
    credits: scope.credits.map((credit) => ({ ...credit, title: words(credit.title) })),
    withoutHours: [...scope.withoutHours],
    cautions: cautionsOf(scope, invented).map(words),
  };
}

function explain(error: unknown, locale: Locale): unknown {
  if (!(error instanceof ScopeError)) return error;
  const errors = error.issues.map((issue) => ({ pointer: pointerOf(issue), detail: say(issue.message, locale) }));
  return new ProblemError('invalid-input', errors.map(({ detail }) => detail).join(' '), { errors });
}

/** JSON Pointer (RFC 6901) into the body. */
const pointerOf = ({ path }: ScopeIssue): string =>
  path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
