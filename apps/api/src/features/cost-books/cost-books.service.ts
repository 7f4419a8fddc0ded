import type { CostBook as CostBookAnswer, CostBookPreview, FieldProblem } from '@underlath/contract';
import type { NumberedBook } from '@underlath/rules/offers';
import { type CostBook, costBookSchema, restsOnInvented, starterCostBook } from '@underlath/rules/pricing';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { toJson } from '../../platform/database/json.ts';
import { hashOf } from '../../platform/hash.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { namesOf } from '../../shared/members.ts';
import { readCostBook } from '../../shared/stored/stored-columns.ts';
import { unknownNames } from '../../shared/unknown-names.ts';
import { assertVersion } from '../../shared/versions.ts';
import { asPerson, type PeopleLogService } from '../people-log/people-log.service.ts';
import type { RecordsService } from '../records/records.service.ts';
import { csvOfBook, readBookCsv } from './cost-book-csv.ts';
import * as books from './cost-books.repository.ts';

/** A company's rates. Versions are only added; before the first one the invented starter book stands in, marked as such. */
export class CostBooksService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
    private readonly peopleLog: PeopleLogService,
  ) {}

  async newest(companyId: string): Promise<CostBookAnswer> {
    return this.database.inCompany(companyId, async (tx) => {
      const row = await books.findNewest(tx, companyId);
      return row ? toAnswer(tx, companyId, row) : starterAnswer(tx, companyId);
    });
  }

  /** One version, 0 for the starter book. @throws ProblemError `not-found` */
  async version(companyId: string, version: number): Promise<CostBookAnswer> {
    return this.database.inCompany(companyId, async (tx) => {
      if (version === 0) return starterAnswer(tx, companyId);
      const row = await books.findVersion(tx, companyId, version);
      if (!row) throw notFound('version of the cost book');
      return toAnswer(tx, companyId, row);
    });
  }

  async exportCsv(companyId: string): Promise<{ version: number; csv: string }> {
    const { version, book } = await this.database.inCompany(companyId, (tx) => this.current(tx, companyId));
    return { version, csv: csvOfBook(book) };
  }

  /** What a CSV would make of the newest book; nothing is saved. @throws ProblemError `invalid-input` cell by cell */
  async preview(companyId: string, csv: string): Promise<CostBookPreview> {
    const current = await this.database.inCompany(companyId, (tx) => this.current(tx, companyId));
    const { book, changes } = readBookCsv(csv, current.book);
    return {
      version: current.version,
      book: { ...book },
      changes: changes.map((change) => ({ ...change, cells: [...change.cells] })),
    };
  }

  /** For pricing, in the caller's transaction. */
  async current(tx: Tx, companyId: string): Promise<NumberedBook> {
    const row = await books.findNewest(tx, companyId);
    return row ? { version: row.version, book: bookOf(row) } : { version: 0, book: starterCostBook };
  }

  async list(companyId: string): Promise<Omit<CostBookAnswer, 'book'>[]> {
    return this.database.inCompany(companyId, async (tx) =>
      toHead(tx, companyId, await books.listBooks(tx, companyId)),
    );
  }

  /** @throws ProblemError `invalid-input` row by row, `stale-version` */
  async save(
    { companyId, memberId, actor }: Caller,
    seen: number,
    raw: Record<string, unknown>,
  ): Promise<CostBookAnswer> {
    const book = readBook(raw);
    return this.database.inCompany(companyId, async (tx) => {
      const current = (await books.findNewest(tx, companyId))?.version ?? 0;
      assertVersion(seen, current);
      const version = current + 1;
      const row = await books.insertBook(tx, {
        companyId,
        version,
        book: toJson(book),
        createdAt: this.clock.now(),
        createdById: memberId,
      });
      // Someone saved the same number between the look and the write.
      if (!row) assertVersion(seen, version);
      const data = { version, sha256: hashOf(book) };
      await this.records.appendToCompany(tx, { companyId, actor, type: 'cost-book.saved', subjectId: companyId, data });
      await this.peopleLog.note(tx, companyId, { type: 'cost-book.saved', actor: asPerson(actor), data: { version } });
      return { ...(await toHead(tx, companyId, row ? [row] : []))[0], book: raw } as CostBookAnswer;
    });
  }
}

const bookOf = ({ companyId, version, book }: Pick<books.CostBookRow, 'companyId' | 'version' | 'book'>): CostBook =>
  readCostBook(`version ${version} of company ${companyId}`, book);

async function starterAnswer(tx: Tx, companyId: string): Promise<CostBookAnswer> {
  const { createdAt } = await books.findCompanyCreated(tx, companyId);
  const book: Record<string, unknown> = { ...starterCostBook };
  return { version: 0, placeholder: true, book, createdAt: createdAt.toISOString(), createdBy: null };
}

const toAnswer = async (tx: Tx, companyId: string, row: books.CostBookRow): Promise<CostBookAnswer> =>
  ({ ...(await toHead(tx, companyId, [row]))[0], book: row.book }) as CostBookAnswer;

async function toHead(tx: Tx, companyId: string, rows: books.CostBookRow[]): Promise<Omit<CostBookAnswer, 'book'>[]> {
  const names = await namesOf(
    tx,
    companyId,
    rows.map(({ createdById }) => createdById),
  );
  return rows.map(({ version, book, createdAt, createdById }) => ({
    version,
    placeholder: restsOnInvented(bookOf({ companyId, version, book })),
    createdAt: createdAt.toISOString(),
    createdBy: createdById ? { id: createdById, name: names.get(createdById) ?? '' } : null,
  }));
}

function readBook(raw: Record<string, unknown>): CostBook {
  const parsed = costBookSchema.safeParse(raw);
  if (parsed.success) return parsed.data;
  const errors = parsed.error.issues.flatMap((issue): FieldProblem[] => {
    const pointer = ['/book', ...issue.path.map(String)].join('/');
    const row = rowName(raw, issue.path);
    if (issue.code !== 'unrecognized_keys') return [{ pointer, detail: `${row}${issue.message}` }];
    return unknownNames(issue.keys, pointer).map((one) => ({ ...one, detail: `${row}${one.detail}` }));
  });
  const shown = errors.slice(0, 3).map(({ pointer, detail }) => `${pointer}: ${detail}`);
  const more = errors.length > shown.length ? ` (and ${errors.length - shown.length} more)` : '';
  throw new ProblemError('invalid-input', `The cost book was not saved. ${shown.join('; ')}${more}.`, { errors });
}

/** `row 4 (plate-tie): ` for an issue inside a row. */
function rowName(raw: Record<string, unknown>, [part, at]: readonly PropertyKey[]): string {
  if (typeof at !== 'number') return '';
  const rows = raw[String(part)];
  const row: unknown = Array.isArray(rows) ? rows[at] : undefined;
  const { operation, id } = (row ?? {}) as { operation?: unknown; id?: unknown };
  const name = operation ?? id;
  return `row ${at + 1}${typeof name === 'string' ? ` (${name})` : ''}: `;
}
