import type { ChangeOrder } from '@underlath/contract';
import { useMemo } from 'react';
import { useKeptDraft } from '../desk/use-kept-draft.ts';
import { noEdit, type OrderDraft, orderDraftSchema } from './draft.ts';

/** What is typed over a change order and not saved; it stays in this browser over tabs, links and reloads. */
export function useOrderDraft({ id, version }: Pick<ChangeOrder, 'id' | 'version'>) {
  const keeping = useMemo(() => ({ key: `underlath.change-order.${id}`, schema: orderDraftSchema }), [id]);
  return useKeptDraft<OrderDraft>(keeping, version, () => noEdit);
}

export type OrderDraftState = ReturnType<typeof useOrderDraft>;
