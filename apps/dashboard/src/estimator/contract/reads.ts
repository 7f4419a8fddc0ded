import { routes } from '@underlath/contract';

/** What is read again after the contract's terms or entries changed; a draft's letter starts from the sum. */
export const contractReads = [
  routes.getContract,
  routes.getContractTerms,
  routes.getContractLedger,
  routes.listContractEntries,
  routes.projectOverview,
  routes.getChangeOrder,
  routes.listRecord,
];
