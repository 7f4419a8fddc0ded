import * as z from 'zod';
import { changeOrderState, day, givenDay, id, instant, noticeMethod, positiveCents, words } from './common.ts';
import { contractSums } from './projects.ts';
import { office, route } from './route.ts';

/** Sums of many entries; each entry alone is held to what a column takes. */
const sumCents = z.int();
const someCents = z.int().min(1).max(2_000_000_000);
const percent = z.number().min(0).max(100);
const dayKind = z.enum(['calendar', 'working']);

/** A payment agreed for the original sum. */
export const milestone = z.strictObject({
  id,
  name: words(80),
  /** For a client who reads Spanish. */
  nameEs: words(80).optional(),
  cents: someCents,
});

const terms = {
  retainagePct: percent,
  /** Whether a saving also gives back the overhead and profit on it. */
  netDecreaseReturnsOverheadAndProfit: z.boolean(),
  /** How the days of the contract are counted. */
  dayKind,
  /** Days that are no working days, beside Saturdays and Sundays. */
  daysOff: z.array(givenDay).max(366),
  /** Days after a hidden condition was first seen; null where the contract only says promptly. */
  noticeDays: z.int().min(0).max(365).nullable(),
  noticeDayKind: dayKind,
  /** Empty where the contract names none. */
  noticeMethods: z.array(noticeMethod).max(5),
  /** In the order they come due. */
  milestones: z.array(milestone).max(40),
};

/** Version 0 are the terms nobody has written yet: no retainage, working days, no payments. */
export const contractTerms = z.object({
  version: z.int(),
  ...terms,
  milestones: z.array(milestone.extend({ name: z.string(), nameEs: z.string().optional() })),
  daysOff: z.array(day),
  changedAt: instant.nullable(),
});

const newEntry = { id: id.optional(), name: words(120), happenedOn: givenDay };
const payment = { kind: z.literal('payment'), cents: someCents };
const completed = { kind: z.literal('completed'), cents: someCents };
const allowance = {
  kind: z.literal('allowance'),
  allowedCents: positiveCents,
  spentCents: positiveCents,
  /** Taken on what is spent over the allowance; on what is saved only where the terms give it back. */
  overheadProfitPct: percent,
};
const entryFoot = {
  id,
  name: z.string(),
  happenedOn: day,
  /** What it did to the contract sum, once and still. */
  changeCents: z.int(),
  enteredAt: instant,
  enteredBy: z.object({ id, name: z.string() }),
  takenBack: z.object({ at: instant, why: z.string() }).nullable(),
};

/** What happened to a contract beside its change orders. A wrong one is taken back with a reason; it is never changed. */
export const contractEntry = z.discriminatedUnion('kind', [
  z.object({ ...payment, milestoneId: id.nullable(), ...entryFoot }),
  /** Work completed and stored since the entry before. */
  z.object({ ...completed, ...entryFoot }),
  z.object({ ...allowance, ...entryFoot }),
]);

export const contractLine = z.object({
  changeOrderId: id,
  number: z.int(),
  headline: z.string(),
  state: changeOrderState,
  cents: z.int(),
  days: z.int(),
  decidedAt: instant.nullable(),
  sumAfterCents: sumCents.nullable(),
  daysAfter: z.int().nullable(),
});

/** What is done and paid; due is below 0 when more was paid than is earned less retainage. */
export const contractMoney = z.object({
  completedCents: sumCents,
  retainageCents: sumCents,
  earnedLessRetainageCents: sumCents,
  paidCents: sumCents,
  dueCents: sumCents,
  /** Retainage included. */
  balanceToFinishCents: sumCents,
});

const happening = { what: z.string(), changeOrderId: id.nullable(), entryId: id.nullable() };

export const contingency = z.object({
  setAsideCents: sumCents,
  usedCents: sumCents,
  leftCents: sumCents,
  overrunCents: sumCents,
  /** In order; below 0 is given back, and `leftCents` below 0 is overrun. */
  draws: z.array(z.object({ ...happening, on: day, drawnCents: sumCents, leftCents: sumCents })),
});

export const plannedPayment = z.object({
  /** Null for the final payment, which takes what changed after all others were settled. */
  milestoneId: id.nullable(),
  name: z.string(),
  agreedCents: sumCents,
  addedCents: sumCents,
  settledOn: day.nullable(),
});

/** What one change order that waits, or is not sent yet, would do if it alone were approved. */
export const changeEffect = z.object({
  changeOrderId: id,
  number: z.int(),
  headline: z.string(),
  state: changeOrderState,
  cents: z.int(),
  days: z.int(),
  payments: z.array(z.object({ milestoneId: id.nullable(), cents: z.int() })),
  sumAfterCents: sumCents,
  finishOn: day.nullable(),
});

export const contract = contractSums.extend({
  dayKind,
  retainagePct: percent,
  approved: z.array(contractLine),
  pending: z.array(contractLine),
  declined: z.array(contractLine),
  money: contractMoney,
  contingency,
  payments: z.array(plannedPayment),
  /** What of the original sum no agreed payment takes; below 0 when they take more. */
  unscheduledCents: sumCents,
  effects: z.array(changeEffect),
});

/** The contract right after one happening; the first is the contract as it was signed. */
export const ledgerEntry = contractMoney.extend({
  on: day.nullable(),
  kind: z.enum(['original', 'change', 'allowance', 'payment', 'completed']),
  ...happening,
  /** Of a change order. */
  state: z.enum(['approved', 'pending', 'declined']).nullable(),
  /** What was paid or completed; null otherwise. */
  cents: z.int().nullable(),
  changeCents: z.int(),
  changeDays: z.int(),
  sumCents,
  days: z.int(),
  finishOn: day.nullable(),
  pendingCents: sumCents,
});

const byProject = z.object({ projectId: id });

export const contractRoutes = {
  getContract: route({
    name: 'getContract',
    method: 'GET',
    path: '/projects/:projectId/contract',
    permission: office,
    summary:
      'Sum, time, money, contingency and payments of the contract, and what each change order not yet answered would do',
    params: byProject,
    answers: { 200: contract },
  }),
  getContractTerms: route({
    name: 'getContractTerms',
    method: 'GET',
    path: '/projects/:projectId/contract/terms',
    permission: office,
    summary: 'Terms of the contract; version 0 before anyone wrote them',
    params: byProject,
    answers: { 200: contractTerms },
  }),
  saveContractTerms: route({
    name: 'saveContractTerms',
    method: 'PUT',
    path: '/projects/:projectId/contract/terms',
    permission: office,
    summary: 'Write the terms of the contract; If-Match "0" the first time',
    versioned: true,
    params: byProject,
    body: z.strictObject(terms),
    answers: { 200: contractTerms },
  }),
  listContractEntries: route({
    name: 'listContractEntries',
    method: 'GET',
    path: '/projects/:projectId/contract/entries',
    permission: office,
    summary: 'Payments, completed work and settled allowances, those taken back included',
    params: byProject,
    answers: { 200: z.object({ items: z.array(contractEntry) }) },
  }),
  addContractEntry: route({
    name: 'addContractEntry',
    method: 'POST',
    path: '/projects/:projectId/contract/entries',
    permission: office,
    summary: 'Enter a payment, completed work, or what an allowance came to; a client-made id makes a repeat harmless',
    idempotent: true,
    params: byProject,
    body: z.discriminatedUnion('kind', [
      z.strictObject({ ...newEntry, ...payment, milestoneId: id.nullable().default(null) }),
      z.strictObject({ ...newEntry, ...completed }),
      z.strictObject({ ...newEntry, ...allowance }),
    ]),
    answers: { 201: contractEntry },
  }),
  takeBackContractEntry: route({
    name: 'takeBackContractEntry',
    method: 'POST',
    path: '/contract-entries/:contractEntryId/take-back',
    permission: office,
    summary: 'Take back an entry that was wrong; it stays readable and counts no more',
    params: z.object({ contractEntryId: id }),
    body: z.strictObject({ why: words(400) }),
    answers: { 200: contractEntry },
  }),
  getContractLedger: route({
    name: 'getContractLedger',
    method: 'GET',
    path: '/projects/:projectId/contract/ledger',
    permission: office,
    summary: 'The contract replayed: as it was after each change order and entry, by day',
    params: byProject,
    answers: { 200: z.object({ items: z.array(ledgerEntry) }) },
  }),
  exportContractLedger: route({
    name: 'exportContractLedger',
    method: 'GET',
    path: '/projects/:projectId/contract/ledger/csv',
    permission: office,
    summary: 'The same as CSV (RFC 4180, UTF-8), units in the header',
    params: byProject,
    answers: { 200: 'text/csv' },
  }),
} as const;

export type Milestone = z.infer<typeof milestone>;
export type ContractTerms = z.infer<typeof contractTerms>;
export type ContractEntry = z.infer<typeof contractEntry>;
export type Contract = z.infer<typeof contract>;
export type ContractLine = z.infer<typeof contractLine>;
export type Contingency = z.infer<typeof contingency>;
export type PlannedPayment = z.infer<typeof plannedPayment>;
export type ChangeEffect = z.infer<typeof changeEffect>;
export type LedgerEntry = z.infer<typeof ledgerEntry>;
