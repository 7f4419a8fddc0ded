import { loadPathAnswer } from '@underlath/contract';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { v1 } from '../support/site.ts';

let api: TestApi;

beforeAll(async () => {
  api = await startTestApi();
});
afterAll(() => api.close());

const evaluate = (body: object) => api.http().post(`${v1}/load-paths/evaluate`).send(body);

const panels = { name: 'Panels', role: 'panels', state: 'findings', remaining: [0.8, 0.24], intendedLb: 3040 };
const tie = { name: 'Hold-down', role: 'hold-down', state: 'sound', tensionLb: 4000, leverFt: 7.5 };
const footing = { name: 'Footing', role: 'footing', state: 'unseen' };
const segment = { name: 'East', lengthFt: 8, heightFt: 9, links: [panels, tie, footing] };
const wall = { kind: 'wall-line', storiesAbove: 1, demandLb: 2500, segments: [segment] };

describe('a load path, for anyone', () => {
  test('is answered in exactly the agreed shape, with its working', async () => {
    const { status, body } = await evaluate(wall);
    expect(status).toBe(200);
    expect(loadPathAnswer.strict().safeParse(body).error).toBeUndefined();
    expect(body).toMatchObject({ known: false, verdict: 'fails', severity: 'engineer', referrals: ['engineer'] });
    expect(body.atMostLb).toBeCloseTo(0.24 * 3040, 9);
    expect(body.ratio).toBeCloseTo(2500 / (0.24 * 3040), 9);
    expect(body.segments[0]).toMatchObject({ governing: 'Panels', unseen: ['Footing'], intendedLb: 3040 });
    expect(body.segments[0].links[1].intendedLb).toBeCloseTo((4000 * 7.5) / 9, 9);
    expect(body.openNext).toMatchObject([{ segment: 'East', link: 'Footing', couldLowerToLb: 0 }]);
  });

  test('is told in the language asked for', async () => {
    const spanish = await evaluate(wall).set('accept-language', 'es');
    expect(spanish.body.reasons[0]).toBe('Cuando mucho 730 lb de sus 3,040 lb se pueden contar.');
    const asked = await api.http().post(`${v1}/load-paths/evaluate?locale=es`).send(wall);
    expect(asked.body).toEqual(spanish.body);
  });

  test('multiplies losses of one mode, names what is not listed, and takes what is said not to be there', async () => {
    const nails = { mode: 'panel-nails' };
    const remaining = [
      { ...nails, share: 0.8 },
      { ...nails, share: 0.5 },
    ];
    const body = { ...wall, segments: [{ ...segment, links: [{ ...panels, remaining }, tie] }] };
    const answer = (await evaluate(body)).body;
    expect(answer.segments[0].links[0].remaining).toBeCloseTo(0.4, 12);
    expect(answer.notListed).toEqual(['top-plate', 'posts', 'sill-bolts', 'footing']);
    const joists = { name: 'Joists', role: 'member', state: 'sound' };
    const girder = { kind: 'gravity-line', segments: [{ name: 'A', without: ['beam'], links: [joists] }] };
    expect((await evaluate(girder)).body.notListed).toEqual(['hanger', 'seat', 'post', 'footing']);
  });

  test('gives nulls, not zeros, while nothing of it has been seen', async () => {
    const { body } = await evaluate({ kind: 'wall-line', segments: [{ name: 'East', links: [footing] }] });
    expect(body).toMatchObject({ atMostLb: null, intendedLb: null, remaining: null, ratio: null, known: false });
  });

  test.each<[string, object, string]>([
    ['a negative length', { ...wall, segments: [{ ...segment, lengthFt: -8 }] }, '/segments/0/lengthFt'],
    [
      'an unknown role',
      { ...wall, segments: [{ ...segment, links: [{ ...panels, role: 'rafter tie' }] }] },
      '/segments/0/links/0/role',
    ],
    [
      'a role of another kind of line',
      { ...wall, segments: [{ ...segment, links: [{ ...panels, role: 'hanger' }] }] },
      '/segments/0/links/0/role',
    ],
    [
      'a share above one',
      { ...wall, segments: [{ ...segment, links: [{ ...panels, remaining: [0.5, 1.2] }] }] },
      '/segments/0/links/0/remaining/1',
    ],
    [
      'a loss whose mode has no name',
      { ...wall, segments: [{ ...segment, links: [{ ...panels, remaining: [{ share: 0.5, mode: '' }] }] }] },
      '/segments/0/links/0/remaining/0/mode',
    ],
    ['a wall without its posts', { ...wall, segments: [{ ...segment, without: ['posts'] }] }, '/segments/0/without/0'],
    [
      'a link that is there twice',
      { ...wall, segments: [{ ...segment, links: [panels, panels] }] },
      '/segments/0/links/1/name',
    ],
    [
      'a lever longer than its segment',
      { ...wall, segments: [{ ...segment, links: [{ ...tie, leverFt: 8.5 }] }] },
      '/segments/0/links/0/leverFt',
    ],
    ['an unknown kind', { ...wall, kind: 'roof-line' }, '/kind'],
    ['no segment', { ...wall, segments: [] }, '/segments'],
    ['a field there is not', { ...wall, color: 'red' }, '/color'],
  ])('with %s is refused, naming the field', async (_name, body, pointer) => {
    const answer = await evaluate(body);
    expect([answer.status, answer.body.type]).toEqual([422, 'urn:underlath:problem:invalid-input']);
    expect(answer.body.errors.map((error: { pointer: string }) => error.pointer)).toEqual([pointer]);
  });

  test('is in the description of the API as it is served', async () => {
    const { body } = await api.http().get(`${v1}/openapi.json`);
    expect(body.paths['/api/v1/load-paths/evaluate'].post.operationId).toBe('evaluateLoadPath');
  });

  test('is limited by address like the checks', async () => {
    const strict = await startTestApi({ limits: { perAddress: 2 } });
    try {
      const send = () => strict.http().post(`${v1}/load-paths/evaluate`).send(wall);
      expect([(await send()).status, (await send()).status]).toEqual([200, 200]);
      const refused = await send();
      expect(refused.status).toBe(429);
      expect(Number(refused.headers['retry-after'])).toBeGreaterThan(0);
    } finally {
      await strict.close();
    }
  });
});
