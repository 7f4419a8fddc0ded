import type { Actual, actualRoutes, BodyOut, Estimate, PlannedAgainstTaken, WorkHistory } from '@underlath/contract';
import { findOperation, hoursHistory, type Text, text } from '@underlath/rules';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertSameContent, contentHash, makeOnce } from '../../shared/client-ids.ts';
import { dayOf } from '../../shared/days.ts';
import { namesOf } from '../../shared/members.ts';
import type { CostBooksService } from '../cost-books/cost-books.service.ts';
import type { EstimatesService, Found } from '../estimates/estimates.service.ts';
import type { RecordsService } from '../records/records.service.ts';
import type { ActualRow } from './actuals.repository.ts';
import * as actuals from './actuals.repository.ts';

type Entry = BodyOut<typeof actualRoutes.enterActual>;

/** What jobs took, beside what was planned. The cost book shows it and is changed by no one but its owner. */
export class ActualsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
    private readonly estimates: EstimatesService,
    private readonly books: CostBooksService,
  ) {}

  /** @throws ProblemError `not-found` */
  async list(companyId: string, findingId: string): Promise<{ items: Actual[]; work: PlannedAgainstTaken[] }> {
    return this.database.inCompany(companyId, async (tx) => {
      const { scope } = await this.estimates.find(tx, companyId, findingId);
      const rows = await actuals.listActuals(tx, companyId, findingId);
      return { items: await toActuals(tx, companyId, rows), work: compare(scope.lines, rows) };
    });
  }

  /** @throws ProblemError `not-found`, `wrong-state` before it is approved, `invalid-input`, `already-exists` */
  async enter(caller: Caller, findingId: string, entry: Entry): Promise<Actual> {
    return makeOnce(() =>
      this.database.inCompany(caller.companyId, async (tx) =>
        toActual(tx, await this.add(tx, caller, findingId, entry)),
      ),
    );
  }

  private async add(
    tx: Tx,
    { companyId, memberId, actor }: Caller,
    findingId: string,
    entry: Entry,
  ): Promise<ActualRow> {
    const { id = newId(), doneOn, ...rest } = entry;
    const content = { findingId, doneOn, ...rest };
    const known = await actuals.findActual(tx, companyId, id);
    if (known) {
      const first = await this.records.lastData(tx, companyId, id, 'actual.entered');
      assertSameContent('entry', first?.content, content);
      return known;
    }
    const finding = await this.estimates.lockFinding(tx, companyId, findingId);
    assertAgreed(finding);
    const unit = unitOf(entry.operation);
    const row = await actuals.insertActual(tx, {
      companyId,
      id,
      projectId: finding.projectId,
      findingId,
      ...rest,
      unit,
      doneOn: new Date(doneOn),
      enteredAt: this.clock.now(),
      enteredById: memberId,
    });
    const data = { ...content, unit, content: contentHash(content) };
    const { projectId } = finding;
    await this.records.append(tx, { companyId, projectId, actor, type: 'actual.entered', subjectId: id, data });
    return row;
  }

  /** @throws ProblemError `not-found`, `wrong-state` when it was taken back already */
  async takeBack({ companyId, actor }: Caller, id: string, why: string): Promise<Actual> {
    return this.database.inCompany(companyId, async (tx) => {
      const seen = await actuals.findActual(tx, companyId, id);
      if (!seen) throw notFound('entry');
      const { projectId } = seen;
      await this.records.lock(tx, companyId, projectId);
      const row = await actuals.findActual(tx, companyId, id);
      if (row?.takenBackAt) throw new ProblemError('wrong-state', 'This entry has been taken back already.');
      const after = await actuals.takeBack(tx, companyId, id, this.clock.now(), why);
      await this.records.append(tx, {
        companyId,
        projectId,
        actor,
        type: 'actual.taken-back',
        subjectId: id,
        data: { reason: why },
      });
      return toActual(tx, after);
    });
  }

  /** Each finding is one job: its entries for one kind of work are added up. */
  async history(companyId: string): Promise<{ costBookVersion: number; items: WorkHistory[] }> {
    return this.database.inCompany(companyId, async (tx) => {
      const { version, book } = await this.books.current(tx, companyId);
      const jobs = await actuals.sumByFinding(tx, companyId);
      const works = [
        ...new Map(jobs.map(({ operation, unit }) => [`${operation} ${unit}`, { operation, unit }])).values(),
      ];
      const items = works.flatMap(({ operation, unit }): WorkHistory[] => {
        const ofWork = jobs.filter((job) => job.operation === operation && job.unit === unit);
        const hours = book.items.find((one) => one.operation === operation && one.unit === unit)?.hoursPerUnit ?? null;
        const found = hoursHistory(hours, ofWork);
        if (!found) return [];
        const { weight: _, ...told } = found;
        return [{ operation, title: titleOf(operation), unit, ...told, book: hours }];
      });
      return { costBookVersion: version, items: items.toSorted((a, b) => b.jobs - a.jobs || order(a, b)) };
    });
  }
}

const order = (a: WorkHistory, b: WorkHistory): number => a.title.en.localeCompare(b.title.en, 'en');

const titleOf = (operation: string): Text => findOperation(operation)?.title ?? text(operation, operation);

/** @throws ProblemError `invalid-input` */
function unitOf(operation: string): string {
  const found = findOperation(operation);
  if (!found) throw invalidInput('/operation', `operation: there is no work called "${operation}".`);
  return found.unit;
}

const agreed: readonly Found['state'][] = ['approved', 'repaired', 'proven'];

function assertAgreed({ state, finding: { number } }: Found): void {
  if (agreed.includes(state)) return;
  throw new ProblemError(
    'wrong-state',
    `Finding ${number} is ${state}. Actuals are entered once the client has approved its change order.`,
  );
}

function compare(lines: Estimate['scope']['lines'], rows: readonly ActualRow[]): PlannedAgainstTaken[] {
  const counted = rows.filter(({ takenBackAt }) => takenBackAt === null);
  const planned = lines.filter(({ operation }) => findOperation(operation));
  const names = new Set([...planned.map(({ operation }) => operation), ...counted.map(({ operation }) => operation)]);
  return [...names].map((operation) => {
    const plan = planned.filter((line) => line.operation === operation);
    const took = counted.filter((row) => row.operation === operation);
    return {
      operation,
      title: titleOf(operation),
      unit: plan[0]?.unit ?? took[0]?.unit ?? '',
      planned: plan.length > 0 ? { quantity: total(plan, 'quantity'), hours: total(plan, 'hours') } : null,
      taken:
        took.length > 0
          ? { quantity: total(took, 'quantity'), hours: total(took, 'hours'), costCents: total(took, 'costCents') }
          : null,
    };
  });
}

/** To a hundredth, as hours and quantities are shown; cents are whole already. */
const total = <Name extends string>(list: readonly Readonly<Record<Name, number>>[], name: Name): number =>
  Math.round(list.reduce((sum, one) => sum + one[name], 0) * 100) / 100;

const toActual = async (tx: Tx, row: ActualRow): Promise<Actual> => {
  const [one] = await toActuals(tx, row.companyId, [row]);
  return one as Actual;
};

async function toActuals(tx: Tx, companyId: string, rows: readonly ActualRow[]): Promise<Actual[]> {
  const names = await namesOf(
    tx,
    companyId,
    rows.map(({ enteredById }) => enteredById),
  );
  return rows.map(({ id, findingId, operation, unit, quantity, hours, costCents, note, ...row }) => ({
    id,
    findingId,
    operation,
    title: titleOf(operation),
    unit,
    quantity,
    hours,
    costCents,
    note,
    doneOn: dayOf(row.doneOn),
    enteredAt: row.enteredAt.toISOString(),
    enteredBy: { id: row.enteredById, name: names.get(row.enteredById) ?? '' },
    takenBack: row.takenBackAt && { at: row.takenBackAt.toISOString(), why: row.takenBackWhy ?? '' },
  }));
}
