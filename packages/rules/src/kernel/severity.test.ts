import { expect, test } from 'vitest';
import { assumedOfPlace, rateSeverity, type SeverityFacts, type SeverityRow } from './severity.ts';
import { text } from './text.ts';

const FAILS: SeverityFacts = { role: 'gravity', verdict: 'fails', ratio: null, remaining: null };

const rows: readonly [fact: string, facts: SeverityFacts, severity: string, row: SeverityRow][] = [
  ['nothing holds it', { ...FAILS, nothingHolds: true }, 'make-safe', 1],
  ['nothing of it is left', { ...FAILS, remaining: 0 }, 'make-safe', 1],
  ['nothing holds it but it is shored', { ...FAILS, nothingHolds: true, shored: true }, 'engineer', 4],
  [
    'nothing holds it and it is still to be measured',
    { ...FAILS, verdict: 'undetermined', nothingHolds: true },
    'make-safe',
    1,
  ],
  ['less than half of a post is left', { ...FAILS, memberKind: 'post', remaining: 0.49 }, 'make-safe', 2],
  ['exactly half of a post is left', { ...FAILS, memberKind: 'post', remaining: 0.5 }, 'engineer', 4],
  [
    'less than half of a post is left with nothing on it',
    { ...FAILS, memberKind: 'post', remaining: 0.4, carriesStoryOrRoof: false },
    'engineer',
    4,
  ],
  [
    'less than half of a post is left over people',
    { ...FAILS, memberKind: 'post', remaining: 0.4, carriesStoryOrRoof: false, occupiedBelow: true },
    'make-safe',
    2,
  ],
  ['less than half of a joist is left', { ...FAILS, memberKind: 'joist', remaining: 0.4 }, 'engineer', 4],
  ['it carries 1.51 of what it can', { ...FAILS, ratio: 1.51 }, 'make-safe', 2],
  ['it carries 1.5 of what it can', { ...FAILS, ratio: 1.5 }, 'engineer', 4],
  ['a hazard is disturbed', { ...FAILS, role: 'hazard', disturbed: true }, 'make-safe', 3],
  [
    'a hazard that cannot be told is disturbed',
    { ...FAILS, role: 'hazard', verdict: 'undetermined', disturbed: true },
    'make-safe',
    3,
  ],
  ['a truss is cut', { ...FAILS, role: 'finish', verdict: 'undetermined', engineeredCut: true }, 'engineer', 4],
  ['a loaded part cannot be told', { ...FAILS, role: 'lateral', verdict: 'undetermined' }, 'engineer', 4],
  ['bracing keeps 0.84', { ...FAILS, role: 'lateral', remaining: 0.84 }, 'engineer', 5],
  ['bracing keeps 0.85', { ...FAILS, role: 'lateral', remaining: 0.85 }, 'repair', 6],
  ['bracing fails under two stories', { ...FAILS, role: 'lateral', storiesAbove: 2 }, 'engineer', 5],
  ['bracing fails under one story', { ...FAILS, role: 'lateral', storiesAbove: 1 }, 'repair', 6],
  ['bracing with 0.4 of the story on it fails', { ...FAILS, role: 'lateral', storyShare: 0.4 }, 'engineer', 5],
  ['bracing with a third of the story on it fails', { ...FAILS, role: 'lateral', storyShare: 1 / 3 }, 'repair', 6],
  ['a plate is cut in a shear wall', { ...FAILS, role: 'lateral', engineerAlways: text('a', 'b') }, 'engineer', 5],
  ['a finish is past its tolerance', { ...FAILS, role: 'finish' }, 'repair', 6],
  [
    'wood is wetter than its meter reads, and is dried all the same',
    { ...FAILS, role: 'envelope', verdict: 'undetermined', prescriptive: true },
    'repair',
    6,
  ],
  ['a hazard with a prescribed repair', { ...FAILS, role: 'hazard', prescriptive: true }, 'repair', 6],
  [
    'a hanger that holds 0.85 has nails to add by the book',
    { ...FAILS, remaining: 0.85, prescriptive: true },
    'repair',
    '6a',
  ],
  ['a hanger that holds 0.84 has nails to add', { ...FAILS, remaining: 0.84, prescriptive: true }, 'engineer', 4],
  ['a joist that keeps 0.9 has no prescribed repair', { ...FAILS, remaining: 0.9 }, 'engineer', 4],
  ['what is left of a joist is not known', { ...FAILS, prescriptive: true }, 'engineer', 4],
  [
    'nothing holds a shored joist that has a prescribed repair',
    { ...FAILS, remaining: 1, prescriptive: true, nothingHolds: true, shored: true },
    'engineer',
    4,
  ],
  ['a hazard is undisturbed', { ...FAILS, role: 'hazard' }, 'repair', 7],
  ['it meets', { ...FAILS, verdict: 'meets', remaining: 1 }, 'record', 8],
  ['it does not apply', { ...FAILS, verdict: 'not-applicable' }, 'record', 8],
  ['a capacity is looked up without a load', { ...FAILS, verdict: 'undetermined', calculationOnly: true }, 'record', 8],
  ['a finish cannot be told', { ...FAILS, role: 'finish', verdict: 'undetermined' }, 'record', 8],
];

test.each(rows)('%s', (_fact, facts, severity, row) => {
  const answer = rateSeverity(facts);
  expect([answer.severity, answer.row]).toEqual([severity, row]);
  expect(answer.reason().en).not.toBe('');
  expect(answer.reason().es).not.toBe('');
});

test('"nothing rests on it" is said only when the person said so', () => {
  const cannotTell: SeverityFacts = { role: 'finish', verdict: 'undetermined', ratio: null, remaining: null };
  expect(rateSeverity(cannotTell).reason().en).not.toContain('rests');
  expect(rateSeverity({ ...cannotTell, carriesStoryOrRoof: false }).reason().en).toContain('as you say nothing rests');
});

test('asks for measurements only where some are missing', () => {
  const cannotTell: SeverityFacts = { role: 'gravity', verdict: 'undetermined', ratio: null, remaining: null };
  expect(rateSeverity(cannotTell).reason().en).toContain('measure what is missing');
  expect(rateSeverity({ ...cannotTell, nothingToMeasure: true }).reason().en).not.toContain('measure');
});

test('with so little left that a post would be unsafe, a member of no kind is said to be taken for a joist', () => {
  const member: SeverityFacts = { ...FAILS, role: 'gravity', remaining: 0.4 };
  const taken = (facts: SeverityFacts) => assumedOfPlace(facts, rateSeverity(facts)).map(({ input }) => input);
  expect(taken(member)).toEqual(['context.memberKind']);
  expect(taken({ ...member, memberKind: 'joist' })).toEqual([]);
  expect(taken({ ...member, remaining: 0.6 })).toEqual([]);
  expect(taken({ ...member, shored: true })).toEqual([]);
});

test('what the place did not say is listed where it would have made the rating graver, and only there', () => {
  const taken = (facts: SeverityFacts) => assumedOfPlace(facts, rateSeverity(facts)).map(({ input }) => input);
  const lateral: SeverityFacts = { ...FAILS, role: 'lateral', remaining: 0.9 };
  expect(taken(lateral)).toEqual(['context.storiesAbove', 'context.storyShare']);
  expect(taken({ ...lateral, storiesAbove: 1, storyShare: 0.2 })).toEqual([]);
  expect(taken({ ...lateral, remaining: 0.5 })).toEqual([]);
  expect(taken({ ...lateral, verdict: 'meets' })).toEqual([]);
  expect(taken({ ...FAILS, role: 'hazard' })).toEqual(['context.disturbed']);
  expect(taken({ ...FAILS, role: 'hazard', disturbed: false })).toEqual([]);
});
