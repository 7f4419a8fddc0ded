import { expect, test } from 'vitest';
import { evaluateCheck, findCheck, UnknownCheckError } from './all-checks.ts';
import { InputError, rulesVersion, toAnswer, UnknownEditionError } from './index.ts';

const RECESSED = { diameterIn: 0.625, nut: 'hex', projectionIn: -0.125, rule: 'flush' };

test('an unknown check and an unknown edition are refused by name', () => {
  expect(() => evaluateCheck('anchor.magic', { inputs: {} })).toThrow(UnknownCheckError);
  expect(() => evaluateCheck('cut.top-plate', { edition: 'irc-1899', inputs: {} })).toThrow(UnknownEditionError);
  expect(findCheck('anchor.magic')).toBeUndefined();
});

test('an edition may be named by the request or by code and year', () => {
  const inputs = { widthIn: 3.5, cutIn: 1, bearingOrBraced: true, inShearWall: false };
  const edition = (asked: string | undefined, more: object) =>
    evaluateCheck('cut.top-plate', { edition: asked, inputs: { ...inputs, ...more } }).edition;
  expect(edition('irc-2018', {})).toBe('irc-2018');
  expect(edition('2018', {})).toBe('irc-2018');
  expect(edition(undefined, { code: 'ibc', edition: 2009 })).toBe('ibc-2009');
  expect(edition(undefined, {})).toBe('irc-2024');
  expect(() => edition(undefined, { code: 'ibc', edition: '2003' })).toThrow(InputError);
});

test('the answer has exactly the fields promised and speaks one language', () => {
  const outcome = evaluateCheck('anchor.thread-engagement', { inputs: RECESSED });
  const answer = toAnswer(outcome, 'es');
  expect(Object.keys(answer).sort()).toEqual(
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
  expect(answer.rulesVersion).toBe(rulesVersion);
  expect(answer.reasons[0]).toContain('La varilla termina');
});

test('the last reason is the row of the severity table that decided', () => {
  const outcome = evaluateCheck('anchor.thread-engagement', { inputs: RECESSED });
  expect(outcome.severityRow).toBe(5);
  expect(outcome.reasons.at(-1)?.en).toContain('Less than 0.85');
});

test('what the place says changes the severity and not the verdict', () => {
  const inputs = { ...RECESSED, projectionIn: -0.0625 };
  const judge = (storiesAbove: number) =>
    evaluateCheck('anchor.thread-engagement', { inputs, context: { storiesAbove } });
  expect([judge(1).verdict, judge(1).severity]).toEqual(['fails', 'repair']);
  expect([judge(2).verdict, judge(2).severity]).toEqual(['fails', 'engineer']);
});

test('make safe comes first among the cautions', () => {
  const outcome = evaluateCheck('bearing.seat', { inputs: { bearingLengthIn: 0, positiveConnection: false } });
  expect(outcome.severity).toBe('make-safe');
  expect(outcome.cautions[0]?.en).toContain('Get everyone out from under it');
});

test('a verdict says beside it what it rests on when that was not read in print', () => {
  const judge = (inputs: object) => evaluateCheck('anchor.thread-engagement', { inputs: { ...RECESSED, ...inputs } });
  const [flush, habit] = [judge({}), judge({ rule: 'three-threads' })];
  expect(flush.restsOn).toEqual(['second-hand']);
  expect(flush.reasons.map((one) => one.en)).toContain('Decided by a rule read second-hand, not in its own document.');
  expect(habit.restsOn).toEqual(['second-hand', 'common-practice']);
  expect(habit.reasons.map((one) => one.es)).toContain(
    'Se decide con una regla leída de segunda mano y por práctica común.',
  );
});

test('a rule that does not reach here rests on what was read of it too', () => {
  const newer = evaluateCheck('hazard.asbestos', {
    inputs: { yearBuilt: 1985, materials: ['flooring'], loadBearingRemoved: false },
  });
  expect(newer).toMatchObject({ verdict: 'not-applicable', restsOn: ['second-hand'] });
});

test('a verdict that rests on a document that was read has nothing to add, nor has one that cannot be told', () => {
  const judge = (inputs: object) => evaluateCheck('level.deflection', { inputs });
  const sag = { sagIn: 0.75, spanFt: 14, member: 'floor' };
  expect(judge(sag)).toMatchObject({ verdict: 'fails', restsOn: [] });
  expect(judge({ ...sag, sagIn: undefined })).toMatchObject({ verdict: 'undetermined', restsOn: [] });
  expect(judge(sag).reasons.some(({ en }) => en.startsWith('Decided'))).toBe(false);
});

test('several remembered rules that decide are told in one sentence, each once', () => {
  const notched = { depthIn: 9.25, endNotchIn: 2, species: 'redwood', widthIn: 1.5, endShearLb: 500 };
  const { reasons, restsOn, referrals } = evaluateCheck('cut.joist', { edition: 'irc-2021', inputs: notched });
  expect(restsOn).toEqual(['second-hand', 'memory']);
  expect(reasons.filter(({ en }) => en.startsWith('Decided')).map(({ en }) => en)).toEqual([
    'Decided from memory, confirm it before relying on this verdict: International Residential Code, R502.8.1; NDS Supplement, shear parallel to grain, Table 4A.',
    'Decided by a rule read second-hand, not in its own document.',
  ]);
  expect(referrals).toContain('engineer');
});

test('a rule from memory or from habit says so', () => {
  const cautions = (inputs: object) =>
    evaluateCheck('anchor.thread-engagement', { inputs: { ...RECESSED, ...inputs } }).cautions.map((one) => one.en);
  expect(
    cautions({ rule: 'three-threads' }).some((one) => one.startsWith('Common practice with no published source')),
  ).toBe(true);
  expect(cautions({}).some((one) => one.startsWith('From memory, confirm'))).toBe(true);
});
