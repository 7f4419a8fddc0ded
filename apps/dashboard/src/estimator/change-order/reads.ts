import { routes } from '@underlath/contract';
import { findingReads } from '../finding/moves.tsx';

/** Everything that shows a change order or what it adds up to. */
export const orderReads = [
  ...findingReads,
  routes.getChangeOrder,
  routes.listChangeOrders,
  routes.getContract,
  routes.getContractLedger,
  routes.listRecord,
];
