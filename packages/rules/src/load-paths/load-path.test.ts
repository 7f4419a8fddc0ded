import { describe, expect, test } from 'vitest';
import { evaluateCheck } from '../all-checks.ts';
import { whole } from './any-load-path.setup.ts';
import { evaluateLoadPath, LoadPathError, toLoadPathAnswer, withRepaired } from './evaluate-load-path.ts';
import { LINK_ROLES, type Link, type LinkRole, type LoadPath } from './load-path.ts';

const sound = (name: string, role: LinkRole, more: Partial<Link> = {}): Link => ({
  name,
  role,
  state: 'sound',
  ...more,
});
const unseen = (name: string, role: LinkRole, more: Partial<Link> = {}): Link => ({
  ...sound(name, role, more),
  state: 'unseen',
});
const failed = (name: string, role: LinkRole, remaining: number[], more: Partial<Link> = {}): Link => ({
  ...sound(name, role, more),
  state: 'findings',
  remaining,
});
const resultOf = (id: string, inputs: object, name: string): number =>
  evaluateCheck(id, { inputs }).values[name]?.value as number;

/** The wall of the desk: 15 ft by 9 ft, its left rod short of the nut, its panel in two pieces, its plate cut. */
const deskWall: LoadPath = {
  kind: 'wall-line',
  storiesAbove: 1,
  segments: [
    {
      name: 'East wall',
      lengthFt: 15,
      heightFt: 9,
      links: [
        failed('Top plate', 'top-plate', [0.39], { intendedLb: 4000 }),
        failed('Panels', 'panels', [0.8, 0.24], { intendedLb: 3040 }),
        sound('Posts', 'posts'),
        failed('Hold-down, left', 'hold-down', [0], { intendedLb: 3000 }),
        unseen('Hold-down, right', 'hold-down', { intendedLb: 3000 }),
        sound('Sill bolts', 'sill-bolts', { intendedLb: 3120 }),
        unseen('Footing', 'footing'),
      ],
    },
  ],
};

test('a load of nothing on a line without pounds says what is not known', () => {
  const path = whole({ kind: 'wall-line', storiesAbove: 0, demandLb: 0, segments: [{ name: 'A', links: [] }] });
  expect(evaluateLoadPath(path).reasons.map(({ en }) => en)).toContain(
    'It is asked for 0 lb; nothing in pounds is known to hold against that.',
  );
});

describe('a chain with failed links', () => {
  test('is worth nothing when its hold-down is, whatever the others have left', () => {
    const answer = evaluateLoadPath(deskWall);
    expect(answer).toMatchObject({ intendedLb: 3000, atMostLb: 0, remaining: 0, known: false, verdict: 'fails' });
    expect(answer.governing).toEqual(['Hold-down, left']);
    expect(answer.segments[0]?.unseen).toEqual(['Hold-down, right', 'Footing']);
    expect(answer.reasons[0]?.en).toBe('None of its 3,000 lb can be counted.');
    expect(answer.severity).toBe('engineer');
    expect(answer.referrals).toEqual(['engineer']);
  });

  test('counts the smallest of the shares a link has left', () => {
    const { links = [] } = evaluateLoadPath(deskWall).segments[0] ?? {};
    expect(links.map(({ atMostLb }) => atMostLb)).toEqual([1560, 0.24 * 3040, 3000, 0, null, 3120, null]);
  });

  test('is worth its next weakest link once the first is repaired', () => {
    const repaired = withRepaired(deskWall, [{ segment: 'East wall', link: 'Hold-down, left' }]);
    const answer = evaluateLoadPath(repaired);
    expect(answer.atMostLb).toBeCloseTo(729.6, 10);
    expect(answer.governing).toEqual(['Panels']);
    expect(answer.reasons[0]?.en).toBe('At most 730 lb of its 3,000 lb can be counted.');
  });

  test('a finding that tells no share keeps the line "at most", and the link stays to be looked at', () => {
    const links = [{ name: 'Panels', role: 'panels', state: 'findings', remaining: [0.8], unmeasured: 1 }] as const;
    const answer = evaluateLoadPath({ kind: 'wall-line', segments: [{ name: 'A', links }] });
    expect(answer).toMatchObject({ remaining: 0.8, known: false, segments: [{ unmeasured: ['Panels'] }] });
    expect(answer.openNext.map(({ link }) => link)).toEqual(['Panels']);
  });

  test('works in shares alone where no capacity is known', () => {
    const links = [failed('Plate', 'top-plate', [0.5]), sound('Panels', 'panels')];
    const answer = evaluateLoadPath(whole({ kind: 'wall-line', segments: [{ name: 'A', links }] }));
    expect(answer).toMatchObject({ intendedLb: null, atMostLb: null, remaining: 0.5, known: true, ratio: null });
    expect(answer.governing).toEqual(['Plate']);
  });

  test('takes a failed link of no known capacity as meant for what the chain was meant to carry', () => {
    const links = [failed('Plate', 'top-plate', [0.4]), sound('Panels', 'panels', { intendedLb: 3000 })];
    const answer = evaluateLoadPath({ kind: 'wall-line', segments: [{ name: 'A', links }] });
    expect(answer).toMatchObject({ atMostLb: 1200, remaining: 0.4, governing: ['Plate'] });
    expect(answer.cautions.map(({ en }) => en).join(' ')).toContain('for want of a capacity: Plate');
  });

  test('is never worth more than an unseen link was meant to carry', () => {
    const links = [
      sound('Panels', 'panels', { intendedLb: 3000 }),
      unseen('Bolts', 'sill-bolts', { intendedLb: 2000 }),
    ];
    expect(evaluateLoadPath({ kind: 'wall-line', segments: [{ name: 'A', links }] }).atMostLb).toBe(2000);
  });

  test('does not count a finding that gives no share as sound', () => {
    const links = [failed('Panels', 'panels', [], { intendedLb: 3000 }), sound('Bolts', 'sill-bolts')];
    const answer = evaluateLoadPath({ kind: 'wall-line', segments: [{ name: 'A', links }] });
    expect(answer).toMatchObject({ known: false, verdict: 'undetermined' });
    expect(answer.segments[0]?.unmeasured).toEqual(['Panels']);
    expect(answer.openNext[0]?.link).toBe('Panels');
  });

  test('of which nothing has been seen gives no figure', () => {
    const links = LINK_ROLES['wall-line'].map((role) => unseen(role, role, { intendedLb: 3000 }));
    const answer = evaluateLoadPath({ kind: 'wall-line', demandLb: 1000, segments: [{ name: 'A', links }] });
    expect(answer).toMatchObject({ intendedLb: 3000, atMostLb: null, remaining: null, known: false, ratio: null });
    expect(answer).toMatchObject({ governing: [], verdict: 'undetermined', severity: 'engineer' });
  });
});

/** 15/32 Sheathing, 8d at 4 in, Douglas fir, seismic: 380 plf. SDPWS 2015 Table 4.3A and 4.3.3. */
const panel = {
  standard: 'sdpws-2015',
  method: 'asd',
  load: 'seismic',
  grade: 'sheathing',
  thickness: '15/32',
  nail: '8d',
  edgeSpacingIn: 4,
  species: 'douglas-fir-larch',
  blocked: true,
  studSpacingIn: 16,
  fieldSpacingIn: 12,
  heightFt: 8,
};

describe('walls by the equations of the standard', () => {
  const capacityLb = (lengthFt: number) => resultOf('shear-wall.panel-capacity', { ...panel, lengthFt }, 'capacityLb');
  const segmented = (share: number): LoadPath =>
    whole({
      kind: 'wall-line',
      storiesAbove: 1,
      demandLb: 4000,
      segments: [8, 4].map((lengthFt) => ({
        name: `${lengthFt} ft`,
        lengthFt,
        heightFt: 8,
        links: [
          failed('Panels', 'panels', [lengthFt === 4 ? share : 1], { intendedLb: capacityLb(lengthFt) }),
          sound('Bolts', 'sill-bolts', { intendedLb: 5000 }),
        ],
      })),
    });

  test('a segmented wall of 8 and 4 ft at 380 plf is worth 3,040 + 1,520 = 4,560 lb', () => {
    const answer = evaluateLoadPath(segmented(1));
    expect(answer.segments.map(({ atMostLb }) => atMostLb)).toEqual([3040, 1520]);
    expect(answer).toMatchObject({ intendedLb: 4560, atMostLb: 4560, verdict: 'meets', severity: 'record' });
    expect(answer.reasons.at(-1)?.en).toMatch(/^Nothing to repair here/);
    expect(answer.ratio).toBeCloseTo(4000 / 4560, 12);
  });

  test('with half of its 4 ft segment left it is worth 3,800 lb and does not meet 4,000 lb', () => {
    const answer = evaluateLoadPath(segmented(0.5));
    expect(answer).toMatchObject({ atMostLb: 3800, verdict: 'fails', severity: 'engineer' });
    expect(answer.ratio).toBeCloseTo(4000 / 3800, 12);
    expect(answer.remaining).toBeCloseTo(3800 / 4560, 12);
  });

  test('a demand equal to what is left meets', () => {
    expect(evaluateLoadPath({ ...segmented(0.5), demandLb: 3800 })).toMatchObject({ ratio: 1, verdict: 'meets' });
  });

  test('a perforated wall is one chain: panels 3,316 lb, and end ties for 2,500 lb at 8 ft x 11 / 96 lb each', () => {
    const door = {
      lengthFt: 16,
      heightFt: 8,
      segmentsFt: [6, 6],
      openings: [{ widthFt: 4, heightFt: 80 / 12 }],
      designPlf: 380,
      shearLb: 2500,
    };
    const panelsLb = resultOf('shear-wall.perforated', door, 'capacityLb');
    const upliftLb = resultOf('shear-wall.perforated', door, 'upliftLb');
    const effectiveFt = (8 / 11) * 12;
    const links = [
      sound('Panels', 'panels', { intendedLb: panelsLb }),
      sound('Tie', 'hold-down', { tensionLb: upliftLb, leverFt: effectiveFt }),
    ];
    const segments = [{ name: 'Front', lengthFt: 16, heightFt: 8, links }];
    const answer = evaluateLoadPath(whole({ kind: 'wall-line', storiesAbove: 0, demandLb: 2500, segments }));
    expect(panelsLb).toBeCloseTo((380 * 12 * 8) / 11, 9);
    expect(answer.atMostLb).toBeCloseTo(2500, 9);
    expect(answer).toMatchObject({ governing: ['Tie'], verdict: 'meets' });
  });

  test('a hold-down of 2,680 lb 8 ft from the far end of a wall 8 ft high is worth 2,680 lb of shear', () => {
    const links = [failed('Tie', 'hold-down', [0.77], { tensionLb: 2680, leverFt: 8 })];
    const answer = evaluateLoadPath({
      kind: 'wall-line',
      segments: [{ name: 'A', lengthFt: 8, heightFt: 8, links }],
    });
    expect(answer.intendedLb).toBe(2680);
    expect(answer.atMostLb).toBeCloseTo(0.77 * 2680, 9);
  });

  test('two stories: 2,000 lb above and 3,500 lb here lift the end with 4,000 lb, which holds exactly 3,500 lb', () => {
    const wall = {
      shearLb: 3500,
      heightFt: 9,
      lengthFt: 10,
      deadLoadPlf: 250,
      deadFactor: 0.6,
      stories: [{ shearLb: 2000, heightFt: 8, deadLoadPlf: 0 }],
    };
    const tensionLb = resultOf('shear-wall.overturning', wall, 'upliftLb');
    expect(tensionLb).toBe(4000);
    const tie = { tensionLb, leverFt: 10, momentAboveFtLb: 2000 * 8, resistingFtLb: 0.6 * 12_500 };
    const line = (share: number): LoadPath =>
      whole({
        kind: 'wall-line',
        storiesAbove: 1,
        demandLb: 3500,
        segments: [{ name: 'A', lengthFt: 10, heightFt: 9, links: [failed('Tie', 'hold-down', [share], tie)] }],
      });
    expect(evaluateLoadPath(line(1))).toMatchObject({ atMostLb: 3500, ratio: 1, verdict: 'meets' });
    // Half the tension is far less than half the shear: the moment of the story above comes first.
    expect(evaluateLoadPath(line(0.5)).atMostLb).toBeCloseTo((20_000 + 7_500 - 16_000) / 9, 9);
  });
});

describe('what to open next', () => {
  const chain = (name: string, intendedLb: number, links: Link[]) => ({
    name,
    links: [sound('Panels', 'panels', { intendedLb }), ...links],
  });

  test('is the unseen link of the strongest segment first, with what it could lower the line to', () => {
    const segments = [
      chain('Short', 1000, [unseen('Bolts', 'sill-bolts')]),
      chain('Long', 3000, [unseen('Bolts', 'sill-bolts')]),
    ];
    const { openNext, atMostLb } = evaluateLoadPath({ kind: 'wall-line', segments });
    expect(atMostLb).toBe(4000);
    expect(openNext.map(({ segment, couldLowerToLb }) => [segment, couldLowerToLb])).toEqual([
      ['Long', 1000],
      ['Short', 3000],
    ]);
    expect(openNext[0]?.why.en).toContain('the line falls to 1,000 lb');
  });

  test('puts a link first whose like failed elsewhere in the line', () => {
    const segments = [
      chain('A', 2000, [failed('Bolts', 'sill-bolts', [0.5])]),
      chain('B', 2000, [unseen('Plate', 'top-plate'), unseen('Bolts', 'sill-bolts')]),
    ];
    const { openNext, likeParts } = evaluateLoadPath({ kind: 'wall-line', segments });
    expect(openNext.map(({ link }) => link)).toEqual(['Bolts', 'Plate']);
    expect(openNext[0]?.why.en).toContain('1 of 1 seen in this line has lost strength');
    expect(likeParts).toContainEqual({ role: 'sill-bolts', total: 2, seen: 1, bad: 1 });
  });

  test('says when opening cannot lower the answer any more', () => {
    const { openNext } = evaluateLoadPath(deskWall);
    expect(openNext.map(({ link, couldLowerToLb }) => [link, couldLowerToLb])).toEqual([
      ['Hold-down, right', 0],
      ['Footing', 0],
    ]);
    expect(openNext[0]?.why.en).toContain('cannot lower it further');
  });
});

describe('how grave a line is, by the one table', () => {
  const gravity = (link: Link, more: Partial<LoadPath> = {}) =>
    evaluateLoadPath({ kind: 'gravity-line', segments: [{ name: 'Girder', links: [link] }], ...more });

  test('a hanger that holds nothing in a gravity line makes it unsafe now', () => {
    const answer = gravity(failed('Hanger 3', 'hanger', [0]));
    expect(answer).toMatchObject({ severity: 'make-safe', severityRow: 1 });
    expect(answer.reasons.at(-1)?.en).toMatch(/^Hanger 3: /);
    expect(answer.cautions[0]?.en).toMatch(/^Get everyone out from under it/);
  });

  test('the same hanger shored belongs to an engineer', () => {
    expect(gravity(failed('Hanger 3', 'hanger', [0]), { shored: true })).toMatchObject({ severity: 'engineer' });
  });

  test('less than half a post makes it unsafe now, exactly half belongs to an engineer', () => {
    expect(gravity(failed('Post', 'post', [0.49])).severity).toBe('make-safe');
    expect(gravity(failed('Post', 'post', [0.5])).severity).toBe('engineer');
  });

  test('a gravity line asked for more than one and a half times what is left is unsafe now', () => {
    const beam = failed('Beam', 'beam', [0.9], { intendedLb: 1000 });
    expect(gravity(beam, { demandLb: 1351 }).severity).toBe('make-safe');
    expect(gravity(beam, { demandLb: 1350 }).severity).toBe('engineer');
  });

  test('a small loss in a wall is a repair, and an engineer decides where the story hangs on it', () => {
    const links = [failed('Panels', 'panels', [0.9])];
    const wall = whole({ kind: 'wall-line', storiesAbove: 1, segments: [{ name: 'A', links }] });
    expect(evaluateLoadPath(wall).severity).toBe('repair');
    expect(evaluateLoadPath({ ...wall, storyShare: 0.5 }).severity).toBe('engineer');
    expect(evaluateLoadPath({ ...wall, storiesAbove: 2 }).severity).toBe('engineer');
  });

  test('a sound wall that is asked for too much is no repair but a question for an engineer', () => {
    const links = [sound('Panels', 'panels', { intendedLb: 3000 })];
    const wall = whole({ kind: 'wall-line', storiesAbove: 0, demandLb: 3001, segments: [{ name: 'A', links }] });
    expect(evaluateLoadPath(wall)).toMatchObject({ verdict: 'fails', severity: 'engineer', severityRow: 5 });
  });

  test('an unseen link keeps a sound wall with the engineer', () => {
    const links = [sound('Panels', 'panels'), unseen('Bolts', 'sill-bolts')];
    const answer = evaluateLoadPath({ kind: 'wall-line', segments: [{ name: 'A', links }] });
    expect(answer).toMatchObject({ remaining: 1, known: false, verdict: 'undetermined', severity: 'engineer' });
    expect(answer.reasons[0]?.en).toBe('At most 100% of its strength can be counted.');
  });
});

describe('what cannot be a load path', () => {
  const segment = (links: Link[], more = {}) => ({ name: 'A', links, ...more });
  test.each<[string, LoadPath, (string | number)[]]>([
    [
      'a hanger in a wall line',
      { kind: 'wall-line', segments: [segment([sound('Hanger', 'hanger')])] },
      ['segments', 0, 'links', 0, 'role'],
    ],
    [
      'two segments of a gravity line',
      {
        kind: 'gravity-line',
        segments: [segment([sound('Post', 'post')]), { name: 'B', links: [sound('Post', 'post')] }],
      },
      ['segments'],
    ],
    [
      'two links of one name',
      { kind: 'wall-line', segments: [segment([sound('Tie', 'hold-down'), sound('Tie', 'hold-down')])] },
      ['segments', 0, 'links', 1, 'name'],
    ],
    [
      'a lever longer than its segment',
      {
        kind: 'wall-line',
        segments: [segment([sound('Tie', 'hold-down', { tensionLb: 1, leverFt: 9 })], { lengthFt: 8 })],
      },
      ['segments', 0, 'links', 0, 'leverFt'],
    ],
    [
      'a tension in the panels',
      { kind: 'wall-line', segments: [segment([sound('Panels', 'panels', { tensionLb: 1 })])] },
      ['segments', 0, 'links', 0, 'tensionLb'],
    ],
    [
      'a sound link that lost half',
      { kind: 'wall-line', segments: [segment([sound('Panels', 'panels', { remaining: [0.5] })])] },
      ['segments', 0, 'links', 0, 'remaining'],
    ],
    [
      'a chain without its footing',
      { kind: 'gravity-line', segments: [segment([sound('Post', 'post')], { without: ['footing'] })] },
      ['segments', 0, 'without', 0],
    ],
    [
      'a post that is listed and said not to be there',
      { kind: 'gravity-line', segments: [segment([sound('Post', 'post')], { without: ['post'] })] },
      ['segments', 0, 'without', 0],
    ],
    [
      'findings of an unseen link',
      { kind: 'wall-line', segments: [segment([unseen('Panels', 'panels', { remaining: [1] })])] },
      ['segments', 0, 'links', 0, 'remaining'],
    ],
  ])('%s', (_name, path, pointer) => {
    expect(() => evaluateLoadPath(path)).toThrow(LoadPathError);
    try {
      evaluateLoadPath(path);
    } catch (error) {
      expect((error as LoadPathError).issues.map((issue) => issue.path)).toEqual([pointer]);
    }
  });
});

test('the answer is told in the language asked for', () => {
  const outcome = evaluateLoadPath(deskWall);
  expect(toLoadPathAnswer(outcome, 'en').reasons[0]).toBe('None of its 3,000 lb can be counted.');
  expect(toLoadPathAnswer(outcome, 'es').reasons[0]).toBe('No se puede contar nada de sus 3,000 lb.');
});
