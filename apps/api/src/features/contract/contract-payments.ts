import type { ChangeEffect, ChangeOrderRow, Contract } from '@underlath/contract';
import {
  effectOnPayments,
  evaluateContract,
  type PlannedPayment,
  planPayments,
  type Text,
  text,
} from '@underlath/rules';
import type { History } from './contract-history.ts';

/** The agreed payments as they stand, and what each change order that is open would do to them. */
export function paymentsAnswer(
  history: History,
  open: readonly ChangeOrderRow[],
): Pick<Contract, 'payments' | 'unscheduledCents' | 'effects'> {
  const { terms, project } = history;
  const plan = planOf(history);
  const names = new Map(terms.milestones.map(({ id, name }) => [id, name]));
  const agreed = terms.milestones.reduce((sum, { cents }) => sum + cents, 0);
  return {
    payments: plan.map(({ id, ...payment }) => ({
      milestoneId: id,
      name: id === null ? 'Final payment' : (names.get(id) ?? ''),
      ...payment,
    })),
    unscheduledCents: project.originalSumCents - agreed,
    effects: open.toSorted((a, b) => a.number - b.number).map((order) => effectOf(history, plan, order)),
  };
}

function planOf({ happenings, input, terms }: History): PlannedPayment[] {
  const settledBy = new Map(
    happenings.flatMap(({ entry }, at) => (entry?.milestoneId ? [[at, entry.milestoneId] as const] : [])),
  );
  return planPayments(input, terms.milestones, settledBy);
}

/** What a change adds to each payment still to come, as a letter says it, a name without Spanish in English alone; nothing where no payments are agreed. */
export function changeInPayments(history: History, cents: number): { name: Text; cents: number }[] {
  const plan = planOf(history);
  if (plan.length === 0) return [];
  const names = new Map(history.terms.milestones.map(({ id, name, nameEs = '' }) => [id, text(name, nameEs)]));
  return effectOnPayments(plan, cents).map(({ id, cents: added }) => {
    const name = id === null ? undefined : names.get(id);
    return { name: name ?? text('Final payment', 'Pago final'), cents: added };
  });
}

function effectOf({ input }: History, plan: readonly PlannedPayment[], order: ChangeOrderRow): ChangeEffect {
  const { id, number, headline, state, totalCents, days } = order;
  const after = evaluateContract({ ...input, thisChange: { cents: totalCents, days } });
  return {
    changeOrderId: id,
    number,
    headline,
    state,
    cents: totalCents,
    days,
    payments: effectOnPayments(plan, totalCents).map((part) => ({ milestoneId: part.id, cents: part.cents })),
    sumAfterCents: after.afterCents,
    finishOn: after.finish ?? null,
  };
}
