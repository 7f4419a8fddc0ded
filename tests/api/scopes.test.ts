import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { v1 } from '../support/site.ts';

let api: TestApi;

beforeAll(async () => {
  api = await startTestApi();
});
afterAll(() => api.close());

const location = { kind: 'wall', widthIn: 144, heightIn: 96, framingSpacingIn: 16 };
const panel = (id: string, xIn: number, more: object = {}) => ({
  id,
  repair: 'panel-replace',
  extents: [{ xIn, yIn: 0, widthIn: 48, heightIn: 96 }],
  ...more,
});
const evaluate = (body: object, locale = 'en') => api.http().post(`${v1}/scopes/evaluate`).query({ locale }).send(body);
const crew = { crewSize: 2, hoursPerDay: 8 };

describe('a repair scope, for anyone', () => {
  test('strips, lays panels and counts nails once for two findings that overlap', async () => {
    const { status, body } = await evaluate({ location, findings: [panel('a', 0), panel('b', 32)], ...crew });
    expect(status).toBe(200);
    expect(body.unions.stripSf).toBeCloseTo(160 / 3, 9);
    expect(body.unions).toMatchObject({ panelSheets: 2 });
    expect(body.naive).toEqual({ stripSf: 64, panelSf: 64 });
    expect(body.shares.map((one: { finding: string }) => one.finding)).toEqual(['a', 'b']);
    const hold = body.operations.find((one: { operation: string }) => one.operation === 'inspection-hold');
    const close = body.operations.find((one: { operation: string }) => one.operation === 'close-finish');
    expect(hold).toMatchObject({ holdPoint: true, for: ['a', 'b'] });
    expect(close.after).toEqual([hold.id]);
    expect(body.criticalPath).toContain(hold.id);
    expect(body.workingDays).toBeGreaterThan(0);
  });

  test('takes as many openings through each other as are drawn by hand, and refuses a net of them', async () => {
    const upright = (at: number) => ({ xIn: 48 * at, yIn: 0, widthIn: 6, heightIn: 96 });
    const level = (at: number) => ({ xIn: 0, yIn: 6 * at, widthIn: 960, heightIn: 3 });
    const each = (count: number, make: (at: number) => object, id: string) =>
      Array.from({ length: count }, (_, at) => panel(`${id}${at}`, 0, { extents: [make(at)] }));
    const net = (uprights: number, levels: number) => ({
      location: { ...location, widthIn: 960 },
      findings: [...each(uprights, upright, 'u'), ...each(levels, level, 'l')],
      ...crew,
    });
    expect((await evaluate(net(14, 14))).status).toBe(200);
    const refused = await evaluate(net(15, 14));
    expect(refused.status).toBe(422);
    expect(refused.body.errors).toMatchObject([
      { pointer: '/findings', detail: expect.stringContaining('run through each other more than 200 times') },
    ]);
  });

  test('says when an approved panel would cover a declined finding, in both languages', async () => {
    const request = { location, findings: [panel('a', 0), panel('b', 32)], declined: ['b'], ...crew };
    const [english, spanish] = [await evaluate(request), await evaluate(request, 'es')];
    expect(english.body.conflicts).toMatchObject([{ finding: 'b' }]);
    expect(spanish.body.conflicts[0].why).not.toBe(english.body.conflicts[0].why);
    expect(english.body.unions.panelSheets).toBe(1);
  });

  test('takes hours of the caller in place of the invented ones', async () => {
    const hoursPerUnit = { 'engineer-letter': { low: 1, likely: 20, high: 30 } };
    const letter = [{ id: 'a', repair: 'engineer-letter', extents: [] }];
    const { body } = await evaluate({ location, findings: letter, hoursPerUnit, crewSize: 1, hoursPerDay: 8 });
    expect([body.totalHours.likely, body.workingDays, body.criticalPath]).toEqual([20, 3, ['engineer-letter']]);
    expect(body.cautions.join()).not.toContain('invented');
  });

  test.each([
    ['a rectangle past the end of the wall', { findings: [panel('a', 100)] }, '/findings/0/extents/0/widthIn'],
    ['a rectangle before its start', { findings: [panel('a', -1)] }, '/findings/0/extents/0/xIn'],
    ['an id given twice', { findings: [panel('a', 0), panel('a', 0)] }, '/findings/1/id'],
    [
      'more rectangles than are taken',
      {
        findings: Array.from({ length: 9 }, (_, at) =>
          panel(`f${at}`, 0, { extents: Array(10).fill(panel('a', 0).extents[0]) }),
        ),
      },
      '/findings',
    ],
    ['an unknown repair', { findings: [panel('a', 0, { repair: 'magic' })] }, '/findings/0/repair'],
    ['an unknown amount', { findings: [panel('a', 0, { quantities: { 'a/b': 1 } })] }, '/findings/0/quantities/a~1b'],
    ['a declined finding that is not there', { findings: [], declined: ['x'] }, '/declined/0'],
    [
      'findings that wait for each other',
      { findings: [panel('a', 0, { after: ['b'] }), panel('b', 32, { after: ['a'] })] },
      '/findings/0/after',
    ],
    ['a wall of no width', { location: { ...location, widthIn: 0 }, findings: [] }, '/location/widthIn'],
    ['a crew of nobody', { findings: [], crewSize: 0 }, '/crewSize'],
  ])('%s is 422 and pointed at', async (_name, change, pointer) => {
    const { status, body } = await evaluate({ location, ...crew, ...change });
    expect([status, body.type]).toEqual([422, 'urn:underlath:problem:invalid-input']);
    expect(body.errors.map((one: { pointer: string }) => one.pointer)).toContain(pointer);
  });
});
