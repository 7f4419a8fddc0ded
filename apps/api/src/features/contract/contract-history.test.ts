import { describe, expect, test } from 'vitest';
import type { ContractProject, EntryRow, OrderRow } from './contract.repository.ts';
import { historyOf } from './contract-history.ts';

const words = { en: 'A plate', es: 'Una solera' };
const order = (decidedAt: string): OrderRow => ({
  id: 'order',
  number: 1,
  state: 'approved',
  wording: { headline: words, found: words, why: words, ifNot: words, note: words },
  totalCents: 50_000,
  days: 1,
  decidedAt: new Date(decidedAt),
  createdAt: new Date('2026-03-01T18:00:00Z'),
  versions: [],
});
const payment = (happenedOn: string): EntryRow => ({
  companyId: 'company',
  id: 'payment',
  projectId: 'project',
  kind: 'payment',
  name: 'Deposit',
  happenedOn: new Date(`${happenedOn}T00:00:00Z`),
  cents: 100_000,
  allowedCents: null,
  spentCents: null,
  overheadProfitPct: null,
  milestoneId: null,
  enteredAt: new Date('2026-03-05T18:00:00Z'),
  enteredById: 'person',
  takenBackAt: null,
  takenBackWhy: null,
});
const project = (
  deviceOffset: string | null,
  timeZone: string | null,
  happened: Pick<ContractProject, 'changeOrders' | 'entries'>,
): ContractProject => ({
  companyId: 'company',
  id: 'project',
  version: 1,
  name: 'Alder Street',
  siteAddress: '12 Alder Street, Fairmead',
  siteState: null,
  timeZone,
  clientName: 'Dana Okafor',
  clientEmail: null,
  clientLocale: 'en',
  yearBuilt: null,
  stories: 2,
  originalSumCents: 8_400_000,
  originalDays: 60,
  startOn: null,
  contingencyCents: 0,
  codeEdition: 'irc-2021',
  standardEditions: [],
  jurisdiction: 'Fairmead',
  createdAt: new Date('2026-03-01T18:00:00Z'),
  updatedAt: new Date('2026-03-01T18:00:00Z'),
  photos: deviceOffset === null ? [] : [{ deviceOffset }],
  terms: null,
  ...happened,
});
const daysOf = (offset: string | null, decidedAt: string, timeZone: string | null = null) =>
  historyOf(
    project(offset, timeZone, { changeOrders: [order(decidedAt)], entries: [payment('2026-03-04')] }),
  ).happenings.map(({ event: { kind, on } }) => `${kind} ${on}`);

describe('the day of an answer', () => {
  test('is the day at the site: signed in the evening it is not of the day after', () => {
    expect(daysOf('-08:00', '2026-03-05T02:30:00Z')).toEqual(['change 2026-03-04', 'payment 2026-03-04']);
  });

  test('is told by the westernmost zone where no photo knows one', () => {
    expect(daysOf(null, '2026-03-05T09:30:00Z')).toEqual(['change 2026-03-04', 'payment 2026-03-04']);
  });

  test('is told by the project’s own zone where it is known', () => {
    expect(daysOf('-05:00', '2026-03-05T07:30:00Z', 'America/Los_Angeles')).toEqual([
      'change 2026-03-04',
      'payment 2026-03-04',
    ]);
  });

  test('puts it after what happened the day before', () => {
    expect(daysOf('-08:00', '2026-03-05T09:30:00Z')).toEqual(['payment 2026-03-04', 'change 2026-03-05']);
  });
});
