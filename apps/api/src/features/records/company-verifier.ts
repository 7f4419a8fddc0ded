import type { Fault, StoredEvent, Witness } from './record-chain.ts';
import { RecordChain } from './record-chain.ts';

export interface CompanyRows {
  head: Witness | null;
  projectIds: readonly string[];
  /** Ids of every record there is a head or an event of, the company's own left out. */
  recordIds: readonly string[];
  costBooks: readonly { version: number; sha256: string }[];
  kept: readonly Witness[];
  handed: readonly Witness[];
}

export interface CompanyCheck {
  faults: Fault[];
  events: number;
  costBooks: number;
  /** False where nothing was recorded of the company yet, so its list of projects has nothing to be held against. */
  hasRecord: boolean;
  witnesses: { kept: number; handed: number; agreed: number };
}

interface ListedBook {
  version: number;
  sha256: string;
}

/** Holds a company's projects and cost books against its own record, which names each of them. */
export class CompanyVerifier {
  private readonly chain: RecordChain;
  private readonly projects = new Map<string, number>();
  private readonly books = new Map<number, { sha256: string; seq: number }>();

  constructor(companyId: string) {
    this.chain = new RecordChain(companyId);
  }

  event(stored: StoredEvent): void {
    const event = this.chain.add(stored);
    if (!event) return;
    const { seq, type, subjectId, data } = event;
    const { projectIds = [], costBooks = [] } = data as { projectIds?: string[]; costBooks?: ListedBook[] };
    if (type === 'company.record-opened') {
      for (const id of projectIds) this.projects.set(id, seq);
      for (const { version, sha256 } of costBooks) this.books.set(version, { sha256, seq });
    }
    if (type === 'project.opened') this.projects.set(subjectId, seq);
    if (type === 'cost-book.saved') this.books.set(Number(data.version), { sha256: String(data.sha256), seq });
  }

  finish({ head, projectIds, recordIds, costBooks, kept, handed }: CompanyRows): CompanyCheck {
    const { chain } = this;
    const hasRecord = head !== null || chain.count > 0 || kept.length > 0 || handed.length > 0;
    if (hasRecord) {
      chain.compareHead(head);
      this.compareProjects(projectIds);
      this.compareBooks(costBooks);
    }
    for (const id of recordIds.filter((one) => !projectIds.includes(one))) {
      chain.fault(null, `There is a record of project ${id}, and no project.`);
    }
    const agree = (list: readonly Witness[], from: string) =>
      list.filter((witness) => chain.compareWitness(witness, from)).length;
    const agreed = agree(kept, 'the head kept in the file store') + agree(handed, 'the witness handed in');
    const witnesses = { kept: kept.length, handed: handed.length, agreed };
    return { faults: chain.faults, events: chain.count, costBooks: costBooks.length, hasRecord, witnesses };
  }

  private compareProjects(projectIds: readonly string[]): void {
    for (const id of projectIds) {
      if (!this.projects.has(id)) this.chain.fault(null, `The record of the company does not know project ${id}.`);
    }
    for (const [id, seq] of this.projects) {
      if (!projectIds.includes(id)) this.chain.fault(seq, `Project ${id} is gone.`);
    }
  }

  private compareBooks(costBooks: CompanyRows['costBooks']): void {
    for (const { version, sha256 } of costBooks) {
      const told = this.books.get(version);
      if (!told) this.chain.fault(null, `The record of the company does not know version ${version} of its cost book.`);
      else if (told.sha256 !== sha256) this.chain.fault(told.seq, `Version ${version} of the cost book was changed.`);
    }
    for (const [version, { seq }] of this.books) {
      if (!costBooks.some((book) => book.version === version))
        this.chain.fault(seq, `Version ${version} of the cost book is gone.`);
    }
  }
}
