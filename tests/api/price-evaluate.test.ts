import { EventEmitter, once } from 'node:events';
import { request as httpRequest } from 'node:http';
import { setTimeout as sleep } from 'node:timers/promises';
import { contractAnswer, estimateAnswer } from '@underlath/contract';
import type { EstimateInput } from '@underlath/rules';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { v1 } from '../support/site.ts';

let api: TestApi;

beforeAll(async () => {
  api = await startTestApi();
});
afterAll(() => api.close());

const price = (body: object, locale = 'en') => api.http().post(`${v1}/estimates/evaluate`).query({ locale }).send(body);
const standing = (body: object) => api.http().post(`${v1}/contracts/evaluate`).send(body);
const pointers = (body: { errors: { pointer: string }[] }) => body.errors.map(({ pointer }) => pointer);

/** Invented change order worked by hand: material 412.50, labor 14 h at 52, subcontract 650, disposal 95. */
const worked = {
  name: 'Change',
  location: 'East wall',
  quantity: 1,
  unit: 'each',
  hoursPerUnit: { low: 10, likely: 14, high: 24 },
  rateCents: 5200,
  materialCentsPerUnit: 41_250,
  wastePct: 0,
  materialTaxPct: 8.25,
  equipmentCents: 0,
  subcontractCents: 65_000,
  otherCents: 9500,
};
const estimate = { lines: [worked], overheadPct: 18, profitPct: 10, stacking: 'stacked' };
const range = { trials: 10_000, seed: 3, correlation: 0.4, shape: 'pert-beta' };
/** With 10,000 trials as many lines as one range takes. */
const longest = {
  ...estimate,
  lines: Array.from({ length: 100 }, (_, at) => ({ ...worked, name: `line ${at}` })),
  range,
};

describe('an estimate, for anyone', () => {
  test('is answered in exactly the agreed shape, and foots', async () => {
    const { status, body } = await price({ ...estimate, range });
    expect(status).toBe(200);
    expect(estimateAnswer.strict().safeParse(body).error).toBeUndefined();
    expect(body).toMatchObject({
      subtotalCents: 191_953,
      overheadCents: 34_552,
      profitCents: 22_651,
      totalCents: 249_156,
    });
    expect(body.lines[0]).toMatchObject({
      laborCents: 72_800,
      materialCents: 41_250,
      taxCents: 3403,
      totalCents: 191_953,
    });
    expect(body.lines[0].steps[0]).toBe('Labor: 1 each x 14 h = 14 h x $52.00/h = $728.00');
  });

  test('comes with a range that its formulas confirm, and the same again', async () => {
    const { body } = await price({ ...estimate, range });
    // PERT of 10, 14, 24 h: mean 15, deviation 14/6; a cent of labor is 1.298 cents of the total.
    expect(body.range.analyticMeanCents).toBe(Math.round(249_156 + 1 * 5200 * 1.298));
    expect(body.range.analyticSdCents).toBe(Math.round((14 / 6) * 5200 * 1.298));
    // Six standard errors of the mean of 10,000 trials.
    expect(Math.abs(body.range.meanCents - body.range.analyticMeanCents)).toBeLessThan(
      0.06 * body.range.analyticSdCents,
    );
    expect(body.range.drivers).toEqual([{ name: 'Change', location: 'East wall', share: 1 }]);
    expect((await price({ ...estimate, range })).body).toEqual(body);
    expect((await price(estimate)).body.range).toBeUndefined();
  });

  test('says how hours vary together, and that lines without a location are one place', async () => {
    const loose = { ...worked, location: undefined, name: 'No place' };
    const { body } = await price({ ...estimate, lines: [worked, loose], range });
    expect(body.range.acrossPlaces).toBe(0.2);
    expect(body.range.notes).toEqual([
      'One crew has one pace: hours in different places vary together with correlation 0.2.',
      'Lines without a location count as one place.',
    ]);
    expect((await price({ ...estimate, range: { ...range, acrossPlaces: 0 } }, 'es')).body.range.notes).toEqual([
      'Una cuadrilla tiene un ritmo: las horas de lugares distintos varían juntas con correlación 0.',
    ]);
  });

  test('tells its steps in the language asked for', async () => {
    expect((await price(estimate, 'es')).body.lines[0].steps[0]).toContain('Mano de obra');
  });

  test('prints what a minimum adds inside a part, so that the parts add up', async () => {
    const { body } = await price({ ...estimate, lines: [{ ...worked, minimumCents: 200_000 }] });
    expect(body.lines[0]).toMatchObject({ minimumCents: 8047, otherCents: 9500 + 8047, totalCents: 200_000 });
  });

  const line = (change: object) => ({ lines: [{ ...worked, ...change }] });
  test.each<[string, object, string]>([
    ['a negative quantity', line({ quantity: -1 }), '/lines/0/quantity'],
    ['a quantity in words', line({ quantity: 'two' }), '/lines/0/quantity'],
    ['hours that go down', line({ hoursPerUnit: { low: 3, likely: 2, high: 4 } }), '/lines/0/hoursPerUnit'],
    ['waste over 100%', line({ wastePct: 120 }), '/lines/0/wastePct'],
    ['half a cent', line({ rateCents: 0.5 }), '/lines/0/rateCents'],
    ['a missing rate', line({ rateCents: undefined }), '/lines/0/rateCents'],
    ['a field there is not', line({ color: 'red' }), '/lines/0/color'],
    ['profit over 100%', { profitPct: 101 }, '/profitPct'],
    ['an unknown stacking', { stacking: 'both' }, '/stacking'],
    ['a correlation above one', { range: { ...range, correlation: 1.2 } }, '/range/correlation'],
    ['more across places than within', { range: { ...range, acrossPlaces: 0.5 } }, '/range/acrossPlaces'],
    ['more trials than are taken', { range: { ...range, trials: 1_000_000 } }, '/range/trials'],
    ['more lines than are taken', { ...longest, lines: [...longest.lines, worked] }, '/range/trials'],
    ['a rate past what can be kept', line({ rateCents: 2_000_000_001 }), '/lines/0/rateCents'],
    ['a line past what can be kept', line({ quantity: 10_000, subcontractCents: 2_000_000_000 }), '/lines/0'],
    ['a line past it at its highest hours', line({ hoursPerUnit: { low: 0, likely: 0, high: 1e9 } }), '/lines/0'],
    [
      'lines past it together',
      { lines: [worked, ...[1, 2].map(() => ({ ...worked, subcontractCents: 1_100_000_000 }))] },
      '/lines/1',
    ],
    ['a total that overhead takes past it', { ...line({ subcontractCents: 1_700_000_000 }) }, '/lines/0'],
  ])('with %s is refused, naming the field', async (_name, change, pointer) => {
    const { status, body } = await price({ ...estimate, ...change });
    expect([status, body.type]).toEqual([422, 'urn:underlath:problem:invalid-input']);
    expect(pointers(body)).toEqual([pointer]);
  });

  test('leaves the server free to answer while the longest ranges are drawn', async () => {
    let drawn = false;
    const drawing = Promise.all(Array.from({ length: 16 }, () => price(longest))).then((answers) => {
      drawn = true;
      return answers.map(({ status }) => status);
    });
    let answered = 0;
    while (!drawn) {
      await standing({ ...contract, events: [] });
      if (!drawn) answered += 1;
    }
    expect(await drawing).toEqual(Array.from({ length: 16 }, () => 200));
    // One after the other, not all at once at the end as they would be if the loop stood still.
    expect(answered).toBeGreaterThan(5);
  });

  test('says when the caller hangs up, so that nothing more is drawn', async () => {
    const seen = new EventEmitter();
    const [asked, dropped] = [once(seen, 'asked'), once(seen, 'dropped')];
    const draw = vi.spyOn(api.platform.ranges, 'draw').mockImplementationOnce((_input, _range, signal) => {
      seen.emit('asked');
      return new Promise((_resolve, reject) => {
        signal.addEventListener('abort', () => {
          seen.emit('dropped');
          reject(new Error('dropped'));
        });
      });
    });
    const request = httpRequest(`${api.url}${v1}/estimates/evaluate`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
    });
    request.on('error', () => {});
    request.end(JSON.stringify(longest));
    await asked;
    request.destroy();
    await dropped;
    draw.mockRestore();
  });

  test('that is dropped gives its thread back', async () => {
    // Two billion draws, far more than anyone may ask for: a minute for each thread.
    const endless = { ...longest, lines: Array.from({ length: 2000 }, () => worked) } as EstimateInput;
    const caller = new AbortController();
    const draws = [1, 2].map(() =>
      api.platform.ranges.draw(endless, { ...range, shape: 'pert-beta', trials: 1_000_000 }, caller.signal),
    );
    const answers = Promise.allSettled(draws);
    await sleep(60);
    caller.abort();
    for (const answer of await answers)
      expect(answer).toMatchObject({ status: 'rejected', reason: { type: 'malformed-request' } });
    expect((await price({ ...estimate, range })).status).toBe(200);
  }, 20_000);

  test('is refused as busy with a time to come back when too many are drawn at once', async () => {
    const answers = await Promise.all(Array.from({ length: 40 }, () => price(longest)));
    const refused = answers.filter(({ status }) => status === 503);
    expect(answers.filter(({ status }) => status === 200).length).toBeGreaterThanOrEqual(16);
    expect(refused.length).toBeGreaterThan(0);
    expect(refused[0]?.body.type).toBe('urn:underlath:problem:busy');
    expect(Number(refused[0]?.headers['retry-after'])).toBeGreaterThan(0);
  }, 60_000);
});

const on = '2026-05-04';
const contract = {
  originalCents: 8_400_000,
  originalDays: 60,
  retainagePct: 10,
  netDecreaseReturnsOverheadAndProfit: false,
  events: [
    { kind: 'change', state: 'approved', cents: 324_000, days: 4, on },
    { kind: 'change', state: 'approved', cents: -115_000, days: 0, on },
    { kind: 'change', state: 'pending', cents: 70_000, days: 2, on },
    { kind: 'change', state: 'replaced', cents: 1, days: 1, on },
    { kind: 'completed', cents: 5_230_000, on },
    { kind: 'payment', cents: 3_360_000, on },
  ],
  thisChange: { cents: 249_156, days: 3 },
};

describe('a contract, for anyone', () => {
  test('stands where its events put it (invented figures, worked by hand)', async () => {
    const { status, body } = await standing({ ...contract, start: '2026-03-02' });
    expect(status).toBe(200);
    expect(contractAnswer.strict().safeParse(body).error).toBeUndefined();
    expect(body).toEqual({
      previousChangesCents: 209_000,
      beforeCents: 8_609_000,
      afterCents: 8_858_156,
      daysBefore: 64,
      daysAfter: 67,
      finish: '2026-05-08',
      pendingCents: 70_000,
      pendingDays: 2,
      completedCents: 5_230_000,
      retainageCents: 523_000,
      earnedLessRetainageCents: 4_707_000,
      paidCents: 3_360_000,
      dueCents: 1_347_000,
      balanceToFinishCents: 4_151_156,
    });
  });

  test('counts working days and holidays when told to', async () => {
    const days = { ...contract, originalDays: 5, events: [], thisChange: undefined, dayKind: 'working' };
    const { body } = await standing({ ...days, start: '2026-07-01', holidays: ['2026-07-03'] });
    expect(body.finish).toBe('2026-07-09');
  });

  test('counts the longest time there is in weeks, not day by day', async () => {
    const changes = Array.from({ length: 9 }, () => ({
      kind: 'change',
      state: 'approved',
      cents: 0,
      days: 10_000,
      on,
    }));
    const days = { ...contract, originalDays: 9_997, events: changes, dayKind: 'working', start: '2026-03-02' };
    const { status, body } = await standing(days);
    // 100,000 working days after a Monday, 20,000 weeks.
    expect([status, body.daysAfter, body.finish]).toEqual([200, 100_000, '2409-06-22']);
  });

  test.each<[string, object, string]>([
    ['retainage over 100%', { retainagePct: 101 }, '/retainagePct'],
    ['a day there is not', { events: [{ kind: 'payment', cents: 1, on: '2026-02-30' }] }, '/events/0/on'],
    ['a payment below nothing', { events: [{ kind: 'payment', cents: -1, on }] }, '/events/0/cents'],
    ['an unknown kind of event', { events: [{ kind: 'gift', cents: 1, on }] }, '/events/0/kind'],
    ['a start before 1900', { start: '1066-10-14' }, '/start'],
    ['a holiday after 2200', { dayKind: 'working', holidays: ['2201-01-01'] }, '/holidays/0'],
    ['an event after 2200', { events: [{ kind: 'payment', cents: 1, on: '9999-12-31' }] }, '/events/0/on'],
    [
      'more days than are counted',
      { events: Array.from({ length: 11 }, () => ({ kind: 'change', state: 'pending', cents: 0, days: 10_000, on })) },
      '/events',
    ],
    ['holidays among calendar days', { holidays: [on] }, '/holidays'],
    ['a field there is not', { color: 'red' }, '/color'],
  ])('with %s is refused, naming the field', async (_name, change, pointer) => {
    const { status, body } = await standing({ ...contract, ...change });
    expect([status, body.type]).toEqual([422, 'urn:underlath:problem:invalid-input']);
    expect(pointers(body)).toEqual([pointer]);
  });
});

describe('both', () => {
  test('are in the description of the API as it is served', async () => {
    const { body } = await api.http().get(`${v1}/openapi.json`);
    expect(body.paths['/api/v1/estimates/evaluate'].post.operationId).toBe('evaluateEstimate');
    expect(body.paths['/api/v1/contracts/evaluate'].post.operationId).toBe('evaluateContract');
  });

  test('are limited by address like the checks', async () => {
    const strict = await startTestApi({ limits: { perAddress: 2 } });
    try {
      const send = () => strict.http().post(`${v1}/contracts/evaluate`).send(contract);
      expect([(await send()).status, (await send()).status]).toEqual([200, 200]);
      const refused = await strict.http().post(`${v1}/estimates/evaluate`).send(estimate);
      expect(refused.status).toBe(429);
      expect(Number(refused.headers['retry-after'])).toBeGreaterThan(0);
    } finally {
      await strict.close();
    }
  });
});
