import { checks } from '@underlath/rules/all-checks';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { cutPlate, v1 } from '../support/site.ts';

let api: TestApi;

beforeAll(async () => {
  api = await startTestApi();
});
afterAll(() => api.close());

const evaluate = (id: string, body: object) => api.http().post(`${v1}/checks/${id}/evaluate`).send(body);

describe('the checks, for anyone', () => {
  test('are listed with what to measure, their sources and cases, in both languages', async () => {
    const english = await api.http().get(`${v1}/checks`);
    expect(english.body.items.map(({ id }: { id: string }) => id)).toEqual(checks.map(({ id }) => id));
    for (const check of english.body.items) {
      expect(check.fields.length, check.id).toBeGreaterThan(0);
      expect(check.sources.length, check.id).toBeGreaterThan(0);
      expect(check.cases.length, check.id).toBeGreaterThan(0);
      expect(check.values.length, check.id).toBeGreaterThan(0);
      for (const { name, label, how } of check.values) expect([name, label, how], check.id).not.toContain('');
    }
    const spanish = await api.http().get(`${v1}/checks`).query({ locale: 'es' });
    expect(spanish.body.items[0].title).not.toBe(english.body.items[0].title);
    const one = await api.http().get(`${v1}/checks/cut.top-plate`).set('accept-language', 'es');
    expect(one.body).toEqual(spanish.body.items.find(({ id }: { id: string }) => id === 'cut.top-plate'));
  });

  test('answer in exactly the agreed shape', async () => {
    const { status, body } = await evaluate('cut.top-plate', { inputs: cutPlate, edition: 'irc-2015' });
    expect(status).toBe(200);
    expect(Object.keys(body).sort()).toEqual(
      [
        'checkId',
        'rulesVersion',
        'edition',
        'verdict',
        'ratio',
        'remaining',
        'values',
        'severity',
        'reasons',
        'missing',
        'assumed',
        'sources',
        'cautions',
        'referrals',
        'repairs',
      ].sort(),
    );
    expect(body).toMatchObject({ checkId: 'cut.top-plate', edition: 'irc-2015', verdict: 'fails' });
    expect(body.values.cutShare.value).toBeCloseTo(2 / 3.5, 12);
  });

  test('take a missing measurement as an answer, not as an error', async () => {
    const { status, body } = await evaluate('cut.top-plate', { inputs: {} });
    expect([status, body.verdict]).toEqual([200, 'undetermined']);
    expect(body.missing).toContain('cutIn');
  });

  test.each(checks.map(({ id }) => id))('%s answers over HTTP with nothing measured yet', async (id) => {
    expect((await evaluate(id, { inputs: {} })).status).toBe(200);
  });

  test.each([
    ['a negative length', { cutIn: -1 }, '/inputs/cutIn', /cutIn .*got -1; allowed is a number from 0/],
    ['a text', { cutIn: '2 in' }, '/inputs/cutIn', /got "2 in"; allowed is a number/],
    ['an unknown input', { colour: 'red' }, '/inputs/colour', /colour; allowed are widthIn/],
    ['a wrong part of a group', { tie: { thicknessIn: 9 } }, '/inputs/tie/thicknessIn', /got 9; allowed/],
  ])('%s is refused, naming the input, what came and what is allowed', async (_name, change, pointer, words) => {
    const { status, body, headers } = await evaluate('cut.top-plate', { inputs: { ...cutPlate, ...change } });
    expect([status, body.type]).toEqual([422, 'urn:underlath:problem:invalid-input']);
    expect(headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(body.errors).toHaveLength(1);
    expect(body.errors[0]).toMatchObject({ pointer, detail: expect.stringMatching(words) });
    expect(body.errors[0].words).not.toMatch(/got|allowed|[a-z][A-Z]/);
  });

  test('refuse an edition they do not have, and an id no check has', async () => {
    const edition = await evaluate('cut.top-plate', { inputs: cutPlate, edition: 'irc-1890' });
    expect([edition.status, edition.body.errors[0].pointer]).toEqual([422, '/edition']);
    expect(edition.body.detail).toMatch(/irc-2021/);
    expect((await evaluate('cut.nothing', { inputs: {} })).status).toBe(404);
    expect((await api.http().get(`${v1}/checks/cut.nothing`)).status).toBe(404);
  });

  test.each([
    ['a list for inputs', { inputs: [] }],
    ['no inputs', {}],
    ['an unknown field', { inputs: {}, verdict: 'meets' }],
  ])('%s is 422', async (_name, body) => {
    expect((await evaluate('cut.top-plate', body)).status).toBe(422);
  });
});
