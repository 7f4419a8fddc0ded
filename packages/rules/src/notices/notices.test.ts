import { describe, expect, test } from 'vitest';
import { CONTENT_ITEMS, type ContentItem, reviewContent } from './change-content.ts';
import { type NoticeTerms, runNoticeClock } from './notice-clock.ts';
import { COMMON_CONTENT, STATE_PROFILES } from './states.data.ts';

const without = (...items: ContentItem[]) => CONTENT_ITEMS.filter((item) => !items.includes(item));
const missing = (state: string, carried: readonly ContentItem[]) =>
  reviewContent(state, carried).missing.map(({ anyOf, weight }) => `${anyOf.join('|')} ${weight}`);

describe('what a written change must carry', () => {
  test('a change that carries everything lacks nothing anywhere, and is never called valid', () => {
    for (const { state } of [...STATE_PROFILES, { state: 'ZZ' }]) {
      const { missing: gaps, cautions } = reviewContent(state, CONTENT_ITEMS);
      expect(gaps).toEqual([]);
      expect(cautions.at(-1)?.en).toContain('Check with counsel');
    }
  });

  test('California asks by law for scope, amount and the effect on payments (published: B&P 7159.6(a), 7159)', () => {
    expect(missing('CA', without('scope', 'amount'))).toEqual(['scope law', 'amount law']);
    expect(missing('CA', without('payment-effect'))).toEqual(['payment-effect law']);
    expect(missing('CA', without('finish-effect'))).toEqual(['finish-effect care']);
    expect(missing('CA', without('payment-effect', 'finish-effect'))).toEqual([
      'payment-effect|finish-effect law',
      'payment-effect law',
      'finish-effect care',
    ]);
    const [either] = reviewContent('CA', without('payment-effect', 'finish-effect')).missing;
    expect(either?.words).toEqual({
      en: 'What it does to the payments, or: What it does to the finish date',
      es: 'Qué cambia en los pagos, o: Qué cambia en el fin de la obra',
    });
    const said = reviewContent('CA', [])
      .cautions.map(({ en }) => en)
      .join(' ');
    expect(said).toContain('unjust enrichment');
  });

  test('where the rule is found nothing is doubted, and nothing is asked for twice', () => {
    const { missing: gaps, cautions } = reviewContent('NJ', []);
    expect(cautions).toHaveLength(2);
    expect(gaps.map(({ anyOf }) => anyOf.join())).toEqual([...CONTENT_ITEMS]);
    expect(gaps[0]?.source.id).toBe('nj-njac-13-45a-16.2');
  });

  test('New York asks for a writing signed by all parties for every amendment (published: GBL 771(1))', () => {
    expect(missing('NY', without('signed-by-all'))).toEqual(['signed-by-all law']);
    expect(missing('NY', without('scope'))).toEqual(['scope care']);
  });

  test('Pennsylvania asks for a written change signed by owner and contractor (published: 73 P.S. 517.7)', () => {
    expect(missing('pa', without('in-writing', 'signed-by-all'))).toEqual(['in-writing law', 'signed-by-all law']);
  });

  test('New Jersey asks for changes in writing (published: N.J.A.C. 13:45A-16.2 as described)', () => {
    expect(missing('NJ', without('in-writing'))).toEqual(['in-writing law']);
  });

  test('where the rule for changes was not found nothing is called law, and it is said', () => {
    for (const state of ['MA', 'MD']) {
      const review = reviewContent(state, []);
      expect(review.missing.every(({ weight }) => weight === 'care')).toBe(true);
      expect(review.cautions[0]?.en).toContain('was not found');
    }
  });

  test('a state with no profile gets the common list, and is told so', () => {
    const { profile, missing: gaps, cautions } = reviewContent('WY', []);
    expect(profile).toBeNull();
    expect(gaps).toHaveLength(COMMON_CONTENT.length);
    expect(cautions[0]?.en).toContain('no list for this state');
  });

  test('where the state is not said the common list is used, and that is told', () => {
    const { profile, missing: gaps, cautions } = reviewContent(null, ['scope']);
    expect(profile).toBeNull();
    expect(gaps).toHaveLength(COMMON_CONTENT.length - 1);
    expect(cautions[0]?.en).toContain('state of the site is not said');
  });

  test('every profile says when it was looked at and where each rule comes from, and law is never from memory', () => {
    for (const { checkedOn, rules, state } of STATE_PROFILES) {
      expect(checkedOn).toMatch(/^\d{4}-\d{2}-\d{2}$/);
      expect(state).toMatch(/^[A-Z]{2}$/);
      for (const { weight, source } of rules) {
        expect(source.section).not.toBe('');
        if (weight === 'law') expect(['published', 'second-hand']).toContain(source.basis);
      }
    }
  });
});

describe('the notice clock', () => {
  const terms: NoticeTerms = { days: 14, dayKind: 'calendar', methods: ['letter', 'certified-mail'] };
  const clock = (more: Partial<Parameters<typeof runNoticeClock>[0]> = {}) =>
    runNoticeClock({ firstSeenOn: '2026-06-01', terms, sent: [], today: '2026-06-10', ...more });

  test('14 days after 1 June end on 15 June (term published: A201-2017 3.7.4 as quoted)', () => {
    expect(clock()).toMatchObject({ dueOn: '2026-06-15', daysLeft: 5, state: 'open', sentOn: null });
  });

  test('the last day is in time, the day after is overdue', () => {
    expect(clock({ today: '2026-06-15' })).toMatchObject({ state: 'open', daysLeft: 0 });
    expect(clock({ today: '2026-06-16' })).toMatchObject({ state: 'overdue', daysLeft: -1 });
  });

  test('a notice by a method of the contract stops it, late or in time', () => {
    expect(clock({ sent: [{ on: '2026-06-15', method: 'letter' }], today: '2026-07-01' }).state).toBe('sent');
    expect(clock({ sent: [{ on: '2026-06-16', method: 'letter' }], today: '2026-07-01' }).state).toBe('sent-late');
  });

  test('one in the app does not, where the contract wants a letter', () => {
    const told = clock({ sent: [{ on: '2026-06-02', method: 'app' }], today: '2026-06-20' });
    expect(told).toMatchObject({ state: 'overdue', sentOn: null });
    expect(told.cautions[0]?.en).toContain('a method the contract does not name');
  });

  test('any method counts where the contract names none', () => {
    const told = clock({ terms: { ...terms, methods: [] }, sent: [{ on: '2026-06-02', method: 'app' }] });
    expect(told).toMatchObject({ state: 'sent', sentOn: '2026-06-02' });
  });

  test('the first of several counts, in whatever order they are kept', () => {
    const sent = [
      { on: '2026-06-20', method: 'letter' as const },
      { on: '2026-06-03', method: 'certified-mail' as const },
    ];
    expect(clock({ sent }).sentOn).toBe('2026-06-03');
  });

  test('working days skip weekends and holidays', () => {
    const working: NoticeTerms = { days: 5, dayKind: 'working', methods: [], holidays: ['2026-06-03'] };
    expect(clock({ terms: working }).dueOn).toBe('2026-06-09');
  });

  test('promptly has no last day and is never overdue, but asks for it at once', () => {
    const told = clock({ terms: { ...terms, days: null }, today: '2027-01-01' });
    expect(told).toMatchObject({ dueOn: null, daysLeft: null, state: 'open' });
    expect(told.cautions[0]?.en).toContain('at once');
  });

  test('a place disturbed before the notice is told', () => {
    const said = (disturbedOn: string) =>
      clock({ disturbedOn, sent: [{ on: '2026-06-05', method: 'letter' }] }).cautions.map(({ en }) => en);
    expect(said('2026-06-04')[0]).toContain('disturbed before the notice');
    expect(said('2026-06-05')).toEqual([]);
  });

  test('one dated before the condition was seen counts, and the dates are questioned', () => {
    const told = (on: string) => clock({ sent: [{ on, method: 'letter' }] });
    expect(told('2026-05-31')).toMatchObject({ state: 'sent', cautions: [{ en: expect.stringContaining('before') }] });
    expect(told('2026-06-01').cautions).toEqual([]);
  });

  test('nothing is said where nothing is amiss', () => {
    expect(clock().cautions).toEqual([]);
    const both = [
      { on: '2026-06-02', method: 'app' as const },
      { on: '2026-06-03', method: 'letter' as const },
    ];
    expect(clock({ sent: both }).cautions).toEqual([]);
    expect(clock({ disturbedOn: '2026-06-02' }).cautions[0]?.en).toContain('disturbed before the notice');
  });

  test('no days at all means the same day; promptly is sent in time whenever it is sent', () => {
    expect(clock({ terms: { ...terms, days: 0 }, today: '2026-06-01' })).toMatchObject({ state: 'open', daysLeft: 0 });
    const promptly = { ...terms, days: null };
    expect(clock({ terms: promptly, sent: [{ on: '2026-12-01', method: 'letter' }] })).toMatchObject({
      state: 'sent',
      cautions: [],
    });
  });

  test.each([
    ['a day of a notice there is not', { sent: [{ on: '2026-06-31', method: 'letter' as const }] }, '"2026-06-31"'],
    ['a day it was disturbed there is not', { disturbedOn: 'June' }, '"June" is no day'],
    ['a day there is not', { firstSeenOn: '2026-02-30' }, '"2026-02-30" is no day'],
    ['half a day', { terms: { ...terms, days: 1.5 } }, 'Notice days came as 1.5'],
    ['days below nothing', { terms: { ...terms, days: -1 } }, 'Notice days came as -1'],
  ])('%s is refused by name', (_name, change, message) => {
    expect(() => clock(change)).toThrow(message);
  });
});
