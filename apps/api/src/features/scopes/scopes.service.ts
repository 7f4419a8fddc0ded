import type { PlaceScope, QueryOut, ScopeAnswer, ScopeRequestBody, scopeRoutes } from '@underlath/contract';
import {
  type CostBook,
  type Crew,
  crewOf,
  evaluateScope,
  findRepair,
  type Hours,
  type Locale,
  restsOnInvented,
  type Scope,
  ScopeError,
  type ScopeIssue,
  say,
  type Text,
  text,
} from '@underlath/rules';
import { contentOf, type PriceableFinding, planPlace } from '@underlath/rules/offers';
import type { Database } from '../../platform/database/database.ts';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';
import { toWord } from '../../shared/enum-words.ts';
import type { CostBooksService } from '../cost-books/cost-books.service.ts';
import { toPriceable } from '../estimates/priceable.mapper.ts';
import type { OpenFinding } from './scopes.repository.ts';
import * as scopes from './scopes.repository.ts';

type PlaceQuery = QueryOut<typeof scopeRoutes.getPlaceScope>;

/** Repair scopes: of findings described in a request, and of the open findings of a place. It keeps nothing. */
export class ScopesService {
  /** @param starter the invented book whose hours stand in until the caller gives hours of their own */
  constructor(
    private readonly database: Database,
    private readonly books: CostBooksService,
    private readonly starter: CostBook,
  ) {}

  /** What is to be done at a place, in what order. @throws ProblemError `not-found`, `invalid-input` for a finding of elsewhere */
  async forPlace(
    companyId: string,
    locationId: string,
    { declined = [], ...given }: PlaceQuery,
    locale: Locale,
  ): Promise<PlaceScope> {
    return this.database.inCompany(companyId, async (tx) => {
      if (!(await scopes.hasPlace(tx, companyId, locationId))) throw notFound('place');
      const findings = await scopes.openFindings(tx, companyId, locationId);
      const strange = declined.find((id) => !findings.some((finding) => finding.id === id));
      if (strange) throw invalidInput('/declined', `declined: ${strange} is no open finding of this place.`);
      const { book } = await this.books.current(tx, companyId);
      const usual = crewOf(book);
      const crew: Crew = {
        crewSize: given.crewSize ?? usual.crewSize,
        hoursPerDay: given.hoursPerDay ?? usual.hoursPerDay,
      };
      const without = findings.filter(({ id, state }) => state === 'declined' || declined.includes(id));
      const out = without.map(({ id }) => id);
      const priceable = findings.map(toPriceable);
      const scope = planPlace(priceable, book, crew, out) ?? NOTHING;
      return {
        locationId,
        ...crew,
        inventedHours: restsOnInvented(book),
        findings: priceable.flatMap((finding, at) => {
          const row = findings[at];
          return row ? toScopeFinding(row, finding, !out.includes(finding.id), locale) : [];
        }),
        scope: toAnswer(scope, locale),
      };
    });
  }

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
      return toAnswer(scope, locale, invented ? INVENTED : undefined);
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

function cautionsOf(scope: Scope, invented: Text | undefined): Text[] {
  const shored = scope.operations.some(({ operation }) => operation === 'shore-load');
  return [...(shored ? [SHORING] : []), SCREENING, ...(invented ? [invented] : [])];
}

/** A place without open findings. */
const NOTHING: Scope = {
  operations: [],
  unions: { stripSf: 0, panelSf: 0, panelSheets: 0, panelNails: 0 },
  naive: { stripSf: 0, panelSf: 0 },
  totalHours: { low: 0, likely: 0, high: 0 },
  spanHours: 0,
  workingDays: 0,
  criticalPath: [],
  shares: [],
  conflicts: [],
  credits: [],
  withoutHours: [],
};

function toScopeFinding(
  { title, severity, state }: OpenFinding,
  finding: PriceableFinding,
  included: boolean,
  locale: Locale,
): PlaceScope['findings'][number] {
  return {
    id: finding.id,
    number: finding.number,
    title,
    severity: severity && toWord(severity),
    state,
    extent: finding.extent,
    included,
    proposed: finding.saved === null,
    repairs: contentOf(finding).choices.map(({ repairId }) => {
      const repair = findRepair(repairId);
      return repair ? say(repair.title, locale) : repairId;
    }),
  };
}

function toAnswer(scope: Scope, locale: Locale, invented?: Text): ScopeAnswer {
  const words = (one: Text) => say(one, locale);
  return {
    operations: scope.operations.map(({ area, members, ...one }) => ({
      ...one,
      title: words(one.title),
      // A reason typed by hand is in English alone.
      how: words(one.how) || one.how.en,
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

/** Named in the sentence; the list has them all. */
const SHOWN = 3;

function explain(error: unknown, locale: Locale): unknown {
  if (!(error instanceof ScopeError)) return error;
  const errors = error.issues.map((issue) => ({ pointer: pointerOf(issue), detail: say(issue.message, locale) }));
  const shown = errors.slice(0, SHOWN).map(({ detail }) => detail);
  const more =
    errors.length > SHOWN
      ? [say(text(`And ${errors.length - SHOWN} more.`, `Y ${errors.length - SHOWN} más.`), locale)]
      : [];
  return new ProblemError('invalid-input', [...shown, ...more].join(' '), { errors });
}

/** JSON Pointer (RFC 6901) into the body. */
const pointerOf = ({ path }: ScopeIssue): string =>
  path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
