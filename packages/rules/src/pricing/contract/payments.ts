import type { ContractInput } from './contract-input.ts';
import { ledgerOf, spreadOverPayments } from './ledger.ts';

/** A payment agreed for the original sum, in cents from 0. */
export interface AgreedPayment {
  readonly id: string;
  readonly cents: number;
}

export interface PlannedPayment {
  /** Null for the final payment, which takes what changed after all others were settled. */
  readonly id: string | null;
  readonly agreedCents: number;
  /** Its share of approved changes and settled allowances. */
  readonly addedCents: number;
  readonly settledOn: string | null;
}

/** What one change adds to one payment. */
export interface PaymentEffect {
  /** Null for the final payment. */
  readonly id: string | null;
  readonly cents: number;
}

/**
 * The agreed payments with what changed the sum since: each change goes to the payments that were not settled when it came,
 * by their agreed cents. Retainage and what was really paid are not looked at. Without agreed payments there is no plan.
 * @param settledBy the agreed payment that a payment among the events settles, by its place in the list
 */
export function planPayments(
  input: ContractInput,
  agreed: readonly AgreedPayment[],
  settledBy: ReadonlyMap<number, string>,
): PlannedPayment[] {
  if (agreed.length === 0) return [];
  let plan: PlannedPayment[] = agreed.map(({ id, cents }) => ({
    id,
    agreedCents: cents,
    addedCents: 0,
    settledOn: null,
  }));
  let afterAllCents = 0;
  for (const { event, on, changeCents } of ledgerOf(input)) {
    if (event === null) continue;
    const added = new Map(effectOnPayments(plan, changeCents).map(({ id, cents }) => [id, cents]));
    afterAllCents += added.get(null) ?? 0;
    const settled = settledBy.get(event);
    plan = plan.map((payment) => ({
      ...payment,
      addedCents: payment.addedCents + (added.get(payment.id) ?? 0),
      settledOn: payment.id === settled ? (payment.settledOn ?? on) : payment.settledOn,
    }));
  }
  if (afterAllCents === 0) return plan;
  return [...plan, { id: null, agreedCents: 0, addedCents: afterAllCents, settledOn: null }];
}

/** What a change of so many cents adds to each payment still to come, to the cent; with none left, one final payment takes it. */
export function effectOnPayments(plan: readonly PlannedPayment[], changeCents: number): PaymentEffect[] {
  const toCome = plan.filter(({ id, settledOn }) => id !== null && settledOn === null);
  if (toCome.length === 0) return [{ id: null, cents: changeCents }];
  const parts = spreadOverPayments(
    changeCents,
    toCome.map(({ agreedCents }) => agreedCents),
  );
  return toCome.map(({ id }, at) => ({ id, cents: parts[at] ?? 0 }));
}
