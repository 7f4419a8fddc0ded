import { describe, expect, test } from 'vitest';
import { countedLengthFt as countedByStandard } from '../standards/sdpws-common/perforated.ts';
import { whole } from './any-load-path.setup.ts';
import { evaluateLoadPath } from './evaluate-load-path.ts';
import type { Link, LinkRole, LoadPath, Segment } from './load-path.ts';
import { segmentLengthFt } from './weights.ts';

const sound = (name: string, role: LinkRole, more: Partial<Link> = {}): Link => ({
  name,
  role,
  state: 'sound',
  ...more,
});
const left = (link: Link, remaining: Link['remaining']): Link => ({ ...link, state: 'findings', remaining });
const unseen = (link: Link): Link => ({ ...link, state: 'unseen' });
const wall = (links: readonly Link[], more: Partial<LoadPath> = {}, segment: Partial<Segment> = {}): LoadPath => ({
  kind: 'wall-line',
  storiesAbove: 0,
  segments: [{ name: 'A', lengthFt: 8, heightFt: 9, links, ...segment }],
  ...more,
});
const panels = sound('Panels', 'panels', { intendedLb: 3040 });

describe('a usual link that nobody listed', () => {
  test('counts as unseen and is named: panels alone are no wall', () => {
    const answer = evaluateLoadPath(wall([panels], { demandLb: 1000 }));
    expect(answer).toMatchObject({ known: false, verdict: 'undetermined', severity: 'engineer', atMostLb: 3040 });
    expect(answer.notListed).toEqual(['top-plate', 'posts', 'hold-down', 'sill-bolts', 'footing']);
    expect(answer.segments[0]?.notListed).toEqual(answer.notListed);
    expect(answer.reasons[0]?.en).toBe('At most 3,040 lb of its 3,040 lb can be counted.');
    expect(answer.reasons.map(({ en }) => en)).toContain(
      'Not listed, so not seen: top plate, end posts, hold-down, sill bolts, footing.',
    );
  });

  const beam = sound('Beam', 'beam');
  const line = (links: readonly Link[], without: readonly LinkRole[] = []): LoadPath => ({
    kind: 'gravity-line',
    segments: [{ name: 'Girder', links, without }],
  });

  test('keeps a beam alone from meeting', () => {
    const answer = evaluateLoadPath(line([beam]));
    expect(answer).toMatchObject({ known: false, verdict: 'undetermined', severity: 'engineer' });
    expect(answer.notListed).toEqual(['member', 'hanger', 'seat', 'post', 'footing']);
    expect(answer.reasons.map(({ en }) => en)).toContain(
      'Not listed, so not seen: member, hanger or seat, post, footing.',
    );
  });

  test('is not asked for twice: joists that sit need no hanger', () => {
    const links = [sound('Joists', 'member'), sound('Seat', 'seat'), beam, sound('Post', 'post')];
    expect(evaluateLoadPath(line([...links, sound('Footing', 'footing')]))).toMatchObject({
      notListed: [],
      known: true,
      verdict: 'meets',
    });
  });

  test('may be said not to be there where houses are built so, and the answer says it rests on that', () => {
    const links = [sound('Joists', 'member'), sound('Seat', 'seat'), sound('Stem wall', 'footing')];
    expect(evaluateLoadPath(line(links)).known).toBe(false);
    const answer = evaluateLoadPath(line(links, ['beam', 'post']));
    expect(answer).toMatchObject({ known: true, verdict: 'meets' });
    expect(answer.cautions.map(({ en }) => en)).toContain('Taken as said, there is none of its own: beam, post.');
  });

  test('is looked for in each segment', () => {
    const whole2 = whole(wall([panels])).segments[0] as Segment;
    const answer = evaluateLoadPath({
      kind: 'wall-line',
      storiesAbove: 0,
      segments: [whole2, { ...whole2, name: 'B', links: whole2.links.filter(({ role }) => role !== 'footing') }],
    });
    expect(answer.segments.map(({ notListed }) => notListed)).toEqual([[], ['footing']]);
    expect(answer.known).toBe(false);
  });
});

describe('the link that governs', () => {
  const tie = sound('Hold-down', 'hold-down', { tensionLb: 1687.2, leverFt: 7.5 });

  test('is the hold-down of 1,406 lb, not the sound plate that only repeats it', () => {
    const answer = evaluateLoadPath(whole(wall([sound('Plate', 'top-plate'), panels, tie])));
    expect(answer.intendedLb).toBeCloseTo(1406, 9);
    expect(answer.governing).toEqual(['Hold-down']);
    expect(answer.reasons.map(({ en }) => en)).toContain('The weakest link: Hold-down.');
  });

  test('is the plate once it has lost something of its own', () => {
    const plate = left(sound('Plate', 'top-plate'), [0.4]);
    expect(evaluateLoadPath(whole(wall([plate, panels, tie]))).governing).toEqual(['Plate']);
  });

  test('may be one that nobody has seen, and is then said to be so', () => {
    const answer = evaluateLoadPath(wall([panels, unseen(sound('Bolts', 'sill-bolts', { intendedLb: 2000 }))]));
    expect(answer).toMatchObject({ atMostLb: 2000, governing: ['Bolts'] });
    expect(answer.reasons.map(({ en }) => en)).toContain(
      'The weakest link as it was meant to be, seen by nobody: Bolts.',
    );
  });
});

describe('what is asked of a line that is not known', () => {
  const plate = left(sound('Plate', 'top-plate'), [0.95]);
  const bolts = sound('Bolts', 'sill-bolts', { intendedLb: 5000 });

  test('cannot be told while the at-most figure covers it, whatever was lost', () => {
    const answer = evaluateLoadPath(whole(wall([plate, panels, unseen(bolts)], { demandLb: 1000 })));
    expect(answer.atMostLb).toBeCloseTo(0.95 * 3040, 9);
    expect(answer).toMatchObject({ known: false, verdict: 'undetermined', severity: 'engineer' });
  });

  test('is met when the last link is seen sound, and was not failed before', () => {
    const answer = evaluateLoadPath(whole(wall([plate, panels, bolts], { demandLb: 1000 })));
    expect(answer).toMatchObject({ known: true, verdict: 'meets' });
  });

  test('fails where even the at-most figure falls short', () => {
    const answer = evaluateLoadPath(whole(wall([plate, panels, unseen(bolts)], { demandLb: 3000 })));
    expect(answer).toMatchObject({ known: false, verdict: 'fails', severity: 'engineer' });
  });

  test('fails where nobody has seen any of it and it was never meant for that much', () => {
    const answer = evaluateLoadPath(whole(wall([unseen(panels)], { demandLb: 3041 })));
    const none = evaluateLoadPath(wall([unseen(panels)], { demandLb: 3041 }));
    expect([answer.verdict, none.verdict, none.severity]).toEqual(['fails', 'fails', 'engineer']);
    expect(none.reasons.map(({ en }) => en)).toContain('It is asked for 3,041 lb and was meant for 3,040 lb.');
  });

  test('cannot be told by sound parts whose pounds nobody knows', () => {
    const answer = evaluateLoadPath(whole(wall([sound('Panels', 'panels')], { demandLb: 1000 })));
    expect(answer).toMatchObject({ known: true, verdict: 'undetermined', atMostLb: null });
    expect(answer.reasons[1]?.en).toBe('It is asked for 1,000 lb; nothing in pounds is known to hold against that.');
  });
});

describe('stories above', () => {
  const tie = (more: Partial<Link> = {}) => sound('Tie', 'hold-down', { tensionLb: 3600, leverFt: 7.5, ...more });
  const above = (link: Link, more: Partial<LoadPath> = {}) =>
    evaluateLoadPath(whole(wall([panels, link], { storiesAbove: 2, demandLb: 1200, ...more })));

  test('leave a hold-down without their moment at most 3,000 lb, and the line untold', () => {
    const answer = above(tie());
    expect(answer).toMatchObject({ known: false, verdict: 'undetermined', severity: 'engineer', atMostLb: 3000 });
    expect(answer.segments[0]).toMatchObject({ momentOpen: ['Tie'], governing: 'Tie' });
    expect(answer.reasons.map(({ en }) => en)).toContain(
      'Not charged yet with the moment of the stories above, so at most: Tie.',
    );
    expect(answer.cautions.map(({ en }) => en)).toContain(
      'What stands above lifts the ends of this wall too, before this story adds its own. Give the hold-downs the moment from above, or say which line stands on this one.',
    );
  });

  test('with 16,000 ft-lb leave it (27,000 - 16,000) / 9 = 1,222 lb, which is known', () => {
    const answer = above(tie({ momentAboveFtLb: 16_000 }));
    expect(answer.atMostLb).toBeCloseTo(11_000 / 9, 9);
    expect(answer).toMatchObject({ known: true, verdict: 'meets', governing: ['Tie'] });
    expect(above(tie({ momentAboveFtLb: 16_000 }), { demandLb: 1223 }).verdict).toBe('fails');
  });

  test('that nobody counted may be there; none leave the figure as it is', () => {
    expect(above(tie(), { storiesAbove: undefined })).toMatchObject({ known: false, verdict: 'undetermined' });
    expect(above(tie(), { storiesAbove: 0 })).toMatchObject({ known: true, verdict: 'meets' });
  });

  test('a moment that tension, lever or height cannot carry is not charged, so the line is not known', () => {
    const answer = above(tie({ leverFt: undefined, momentAboveFtLb: 16_000 }));
    expect(answer).toMatchObject({ known: false, verdict: 'undetermined', atMostLb: 3040 });
    expect(answer.segments[0]?.momentOpen).toEqual(['Tie']);
  });

  test.each<[string, Partial<LoadPath>]>([
    ['with a demand', {}],
    ['without a demand', { demandLb: undefined }],
    ['while its panels are unseen', { segments: wall([unseen(panels), tie({ momentAboveFtLb: 40_000 })]).segments }],
  ])('that use the hold-down up make the line fail, %s', (_when, more) => {
    const answer = above(tie({ momentAboveFtLb: 40_000 }), more);
    expect(answer).toMatchObject({ verdict: 'fails', severity: 'engineer', intendedLb: 0, atMostLb: 0, remaining: 0 });
    expect(answer.governing).toEqual(['Tie']);
    expect(answer.reasons.map(({ en }) => en)).toContain(
      'What stands above takes all that it and the dead load hold: Tie.',
    );
  });

  test('that use up the hold-down of one segment make the line fail, however strong the other is', () => {
    const one = whole(wall([panels, tie({ momentAboveFtLb: 40_000 })])).segments;
    const other = whole(wall([panels, tie({ momentAboveFtLb: 0 })], {}, { name: 'B' })).segments;
    const answer = evaluateLoadPath({
      kind: 'wall-line',
      storiesAbove: 2,
      demandLb: 100,
      segments: [...one, ...other],
    });
    expect(answer).toMatchObject({ atMostLb: 3000, verdict: 'fails', severity: 'engineer' });
  });
});

describe('segments without capacities', () => {
  const shares = (pierFt: number, more: Partial<LoadPath> = {}): LoadPath =>
    whole({
      kind: 'wall-line',
      storiesAbove: 0,
      segments: [
        { name: 'Panel', lengthFt: 10, heightFt: 8, links: [left(panel, [0.1])] },
        { name: 'Pier', lengthFt: pierFt, heightFt: 8, links: [panel] },
      ],
      ...more,
    });
  const panel = sound('Panels', 'panels');

  test('count a pier of 2 by 8 ft for nothing: a failed 10 ft panel leaves 10% of the line, not 25%', () => {
    const answer = evaluateLoadPath(shares(2));
    expect(answer.remaining).toBeCloseTo(0.1, 12);
    expect(answer.cautions.map(({ en }) => en)).toContain(
      'Over 3.5 times as high as long, which does not count as a panel wall: Pier.',
    );
  });

  test('never meet with a pier alone, whatever it was meant for, nor where only a pier makes them enough', () => {
    const pier = { name: 'Pier', lengthFt: 2, heightFt: 8, links: [sound('Panels', 'panels', { intendedLb: 500 })] };
    const wall = { ...pier, name: 'Wall', lengthFt: 10 };
    const judged = (segments: LoadPath['segments'], demandLb?: number) =>
      evaluateLoadPath(shares(2, { segments: whole({ kind: 'wall-line', segments }).segments, demandLb }));
    for (const demandLb of [undefined, 0, 100])
      expect(judged([pier], demandLb)).toMatchObject({ verdict: 'undetermined', severity: 'engineer' });
    expect(judged([pier]).reasons.at(-1)?.en).toContain('3.5 times as high as long');
    expect(judged([wall, pier], 501)).toMatchObject({ verdict: 'undetermined', severity: 'engineer' });
    expect(judged([wall, pier], 500)).toMatchObject({ verdict: 'meets', severity: 'record' });
  });

  test('say which segment nobody measured, since it may be too narrow to count', () => {
    const [wall] = shares(2).segments;
    const unmeasured = { ...wall, name: 'A', heightFt: undefined, links: [panel] };
    expect(
      evaluateLoadPath(
        shares(2, { segments: whole({ kind: 'wall-line', segments: [unmeasured] }).segments }),
      ).cautions.map(({ en }) => en),
    ).toContain('Taken to be no more than 3.5 times as high as long, for want of a length or height: A.');
  });

  test('count a pier of 3 by 8 ft for 3 x 2 x 3 / 8 = 2.25 ft', () => {
    expect(evaluateLoadPath(shares(3)).remaining).toBeCloseTo((10 * 0.1 + 2.25) / 12.25, 12);
  });

  test('share by plain length when none of them is slender, and when all of them are', () => {
    expect(evaluateLoadPath(shares(4)).remaining).toBeCloseTo((10 * 0.1 + 4) / 14, 12);
    const tall = shares(2).segments.map((segment) => ({ ...segment, heightFt: 40 }));
    expect(evaluateLoadPath(shares(2, { segments: tall })).remaining).toBeCloseTo((10 * 0.1 + 2) / 12, 12);
  });

  test('count for the length that the standard of perforated walls counts, from 1 to 5 times as high as long', () => {
    for (let lengthFt = 1.6; lengthFt <= 8; lengthFt += 0.1) {
      const segment = { name: 'A', lengthFt, heightFt: 8, links: [] };
      expect(segmentLengthFt(segment)).toBeCloseTo(countedByStandard(lengthFt, 8), 12);
    }
  });
});

describe('several findings on one link', () => {
  const worth = (remaining: Link['remaining']) => evaluateLoadPath(whole(wall([left(panels, remaining)])));
  const words = (remaining: Link['remaining']) =>
    worth(remaining)
      .reasons.map(({ en }) => en)
      .filter((reason) => reason.startsWith('Panels: ') && reason.includes('loss'));
  const nails = (share: number) => ({ share, mode: 'panel-nails' });

  test('of one mode multiply, and the answer says so', () => {
    expect(worth([nails(0.8), nails(0.5)]).remaining).toBeCloseTo(0.4, 12);
    expect(words([nails(0.8), nails(0.5)])).toContain(
      'Panels: 80% x 50% = 40%, losses of one kind multiply (nails of the panel edges).',
    );
  });

  test('of different modes, or of none, leave the smallest', () => {
    expect(worth([nails(0.8), { share: 0.5, mode: 'rod' }]).remaining).toBe(0.5);
    expect(worth([0.8, 0.5]).remaining).toBe(0.5);
    expect(words([0.8, 0.5])).toEqual([
      'Panels: of its losses of different kinds (80%, 50%) the smallest share counts.',
    ]);
  });

  test('multiply before the smallest is taken', () => {
    const remaining = [nails(0.8), { share: 0.5, mode: 'rod' }, nails(0.6)];
    expect(worth(remaining).remaining).toBeCloseTo(0.48, 12);
    expect(words(remaining)).toEqual([
      'Panels: 80% x 60% = 48%, losses of one kind multiply (nails of the panel edges).',
      'Panels: of its losses of different kinds (48%, 50%) the smallest share counts.',
    ]);
  });

  test('of which only one lost anything need no words', () => {
    expect(words([nails(1), nails(0.5)])).toEqual([]);
  });
});
