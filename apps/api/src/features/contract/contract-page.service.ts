import type { ChangeOrderRow, Contract, LedgerEntry } from '@underlath/contract';
import type { Database, Tx } from '../../platform/database/database.ts';
import { csvOfRows } from '../../shared/csv.ts';
import type { ContractService } from './contract.service.ts';
import { sumsOf } from './contract.service.ts';
import { contingencyAnswer, linesOf, moneyAnswer } from './contract-answers.ts';
import type { History } from './contract-history.ts';
import { ledgerAnswer, ledgerTable } from './contract-ledger.ts';
import { paymentsAnswer } from './contract-payments.ts';

/** Tells of the change orders of a project with what they come to today. */
export interface OrderPrices {
  rowsIn(tx: Tx, companyId: string, projectId: string, history: History): Promise<ChangeOrderRow[]>;
}

/** The contract in full, and its history entry by entry; worked out anew each time from what is stored. */
export class ContractPageService {
  constructor(
    private readonly database: Database,
    private readonly contract: ContractService,
    private readonly orders: OrderPrices,
  ) {}

  /** @throws ProblemError `not-found` */
  async get(companyId: string, projectId: string): Promise<Contract> {
    return this.database.inCompany(companyId, async (tx) => {
      const history = await this.contract.history(tx, companyId, projectId);
      const open = (await this.orders.rowsIn(tx, companyId, projectId, history)).filter(
        ({ state }) => state === 'draft' || state === 'sent',
      );
      return {
        ...sumsOf(history),
        dayKind: history.terms.dayKind,
        retainagePct: history.terms.retainagePct,
        ...linesOf(history),
        money: moneyAnswer(history),
        contingency: contingencyAnswer(history),
        ...paymentsAnswer(history, open),
      };
    });
  }

  /** @throws ProblemError `not-found` */
  async ledger(companyId: string, projectId: string): Promise<LedgerEntry[]> {
    return this.database.inCompany(companyId, async (tx) =>
      ledgerAnswer(await this.contract.history(tx, companyId, projectId)),
    );
  }

  /** @throws ProblemError `not-found` */
  async ledgerCsv(companyId: string, projectId: string): Promise<string> {
    return csvOfRows(ledgerTable(await this.ledger(companyId, projectId)));
  }
}
