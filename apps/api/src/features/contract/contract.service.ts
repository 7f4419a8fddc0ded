import type { ContractEffect, ContractSums } from '@underlath/contract';
import { evaluateContract } from '@underlath/rules';
import type { Tx } from '../../platform/database/database.ts';
import { notFound } from '../../platform/problem-error.ts';
import { dayOf } from '../../shared/days.ts';
import type { ContractProject } from './contract.repository.ts';
import * as contracts from './contract.repository.ts';
import { allowancesOf, type Change, effectOf } from './contract-change.ts';
import { type History, historyOf } from './contract-history.ts';

export type { ContractProject, History };

/** Where the contract stands, for those who show it in short. Only approved changes and settled allowances are in the sum. */
export class ContractService {
  /** Everything that made the contract what it is. @throws ProblemError `not-found` */
  async history(tx: Tx, companyId: string, projectId: string): Promise<History> {
    const project = await contracts.findHistory(tx, companyId, projectId);
    if (!project) throw notFound('project');
    return historyOf(project);
  }

  /** Before and after one more change, as a letter shows it. */
  effect(history: History, change: Change): ContractEffect {
    return effectOf(history, change);
  }
}

export function sumsOf(history: History): ContractSums {
  const { project, input } = history;
  const now = evaluateContract(input);
  const allowancesCents = allowancesOf(history);
  return {
    currency: 'USD',
    originalSumCents: project.originalSumCents,
    approvedChangesCents: now.previousChangesCents - allowancesCents,
    allowancesCents,
    currentSumCents: now.beforeCents,
    pendingCents: now.pendingCents,
    originalDays: project.originalDays,
    approvedDays: now.daysBefore - project.originalDays,
    currentDays: now.daysBefore,
    pendingDays: now.pendingDays,
    startOn: project.startOn && dayOf(project.startOn),
    finishOn: now.finish ?? null,
    contingencyCents: project.contingencyCents,
  };
}
