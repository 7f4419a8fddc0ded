import type {
  EstimateContent,
  FindingContext,
  KeptLink,
  KeptSegment,
  LocationKind,
  PhotoStage,
  Rectangle,
  Role,
  StoredLoadPath,
} from '@underlath/contract';
import * as scenes from './pictures/scenes.ts';

// Everyone and everything here is invented: people, company, house, prices. Addresses end in .example, which no one can own (RFC 2606).

export const company = {
  name: 'Quillon & Thatch Remodeling',
  details: {
    licenseNumber: 'INVENTED-0417',
    phone: '(555) 010-0142',
    email: 'office@quillonthatch.example',
    address: '4 Plumb Line Court, Fernmoor, CA 00000',
    state: 'CA',
  },
};

interface DemoPerson {
  readonly role: Role;
  readonly name: string;
  readonly email: string;
  readonly password: string;
}

export const owner: DemoPerson = {
  role: 'owner',
  name: 'Maren Tolliver',
  email: 'maren@quillonthatch.example',
  password: 'ridge beam and king post',
};
export const estimator: DemoPerson = {
  role: 'estimator',
  name: 'Osric Pell',
  email: 'osric@quillonthatch.example',
  password: 'seven joists per bundle',
};
export const crew: DemoPerson = {
  role: 'crew',
  name: 'Dario Quintal',
  email: 'dario@quillonthatch.example',
  password: 'chalk line and plumb bob',
};

export const project = {
  name: 'Arden-Rowe house',
  siteAddress: '18 Hollow Alder Lane, Fernmoor, CA 00000',
  siteState: 'CA',
  clientName: 'Philippa Arden-Rowe',
  clientEmail: 'philippa@ardenrowe.example',
  clientLocale: 'en',
  yearBuilt: 1956,
  stories: 2,
  originalSumCents: 18_640_000,
  originalDays: 84,
  codeEdition: 'irc-2021',
  standardEditions: ['sdpws-2021'],
  jurisdiction: 'Fernmoor (invented)',
  contingencyCents: 1_200_000,
} as const;

/** The payments make up the original sum; ids are given when they are written. */
export const terms = {
  retainagePct: 10,
  netDecreaseReturnsOverheadAndProfit: false,
  dayKind: 'working',
  noticeDays: 5,
  noticeDayKind: 'calendar',
  noticeMethods: ['letter', 'e-mail'],
  dayOffInDays: 9,
  payments: [
    { key: 'signing', name: 'Signing', cents: 3_728_000 },
    { key: 'opened', name: 'Demolition done', cents: 2_796_000 },
    { key: 'framing', name: 'Framing inspection', cents: 4_660_000 },
    { key: 'rough', name: 'Rough inspections', cents: 4_660_000 },
    { key: 'close', name: 'Close', cents: 2_796_000 },
  ],
} as const;

export const work = [
  { kind: 'payment', name: 'Signing', daysAgo: 20, cents: 3_728_000, settles: 'signing' },
  { kind: 'completed', name: 'Demolition and hauling', daysAgo: 12, cents: 3_150_000 },
  { kind: 'payment', name: 'Demolition done, less retainage', daysAgo: 10, cents: 2_516_400, settles: 'opened' },
  {
    kind: 'allowance',
    name: 'Bath tile',
    daysAgo: 8,
    allowedCents: 420_000,
    spentCents: 473_650,
    overheadProfitPct: 20,
  },
  { kind: 'completed', name: 'Framing, first half', daysAgo: 2, cents: 4_820_000 },
] as const;

export interface DemoPlace {
  readonly key: string;
  readonly in?: string;
  readonly kind: LocationKind;
  readonly name: string;
  readonly widthIn?: number;
  readonly heightIn?: number;
  readonly framingSpacingIn?: number;
  readonly memberDepthIn?: number;
  readonly storiesAbove?: number;
  readonly openings?: (Rectangle & { name: string })[];
}

const wallIn = { heightIn: 97.125, framingSpacingIn: 16, memberDepthIn: 3.5 };

export const places: readonly DemoPlace[] = [
  { key: 'first', kind: 'story', name: 'First story', storiesAbove: 1 },
  { key: 'garage', in: 'first', kind: 'room', name: 'Garage', storiesAbove: 1 },
  {
    key: 'garage-wall',
    in: 'garage',
    kind: 'wall',
    name: 'Garage, north wall',
    widthIn: 148.5,
    storiesAbove: 1,
    ...wallIn,
  },
  { key: 'kitchen', in: 'first', kind: 'room', name: 'Kitchen', storiesAbove: 1 },
  {
    key: 'kitchen-beam',
    in: 'kitchen',
    kind: 'beam-line',
    name: 'Kitchen beam',
    widthIn: 186,
    heightIn: 11.875,
    storiesAbove: 1,
  },
  {
    key: 'kitchen-joists',
    in: 'kitchen',
    kind: 'floor',
    name: 'Floor above the kitchen',
    widthIn: 186,
    heightIn: 150,
    framingSpacingIn: 16,
    memberDepthIn: 9.25,
    storiesAbove: 0,
  },
  { key: 'dining', in: 'first', kind: 'room', name: 'Dining room', storiesAbove: 1 },
  {
    key: 'dining-wall',
    in: 'dining',
    kind: 'wall',
    name: 'Dining room, east wall',
    widthIn: 132.5,
    storiesAbove: 1,
    ...wallIn,
    openings: [{ name: 'window', xIn: 44, yIn: 34, widthIn: 48, heightIn: 48 }],
  },
  { key: 'second', kind: 'story', name: 'Second story' },
  { key: 'bath', in: 'second', kind: 'room', name: 'Bathroom' },
  { key: 'bath-wall', in: 'bath', kind: 'wall', name: 'Bathroom, wet wall', widthIn: 97.5, ...wallIn },
];

export interface DemoFinding {
  readonly key: string;
  readonly place: string;
  readonly checkId: string;
  readonly title: string;
  readonly note: string;
  /** Days before today, and the time on the phone. */
  readonly seen: { readonly daysAgo: number; readonly time: string };
  readonly extent: Rectangle;
  readonly inputs: Record<string, unknown>;
  readonly context?: FindingContext;
  readonly photos: readonly { readonly draw: () => string; readonly caption: string; readonly stage: PhotoStage }[];
  /** False: it stays judged, without a price. */
  readonly priced?: boolean;
  /** What the estimator typed beside the suggested repair. */
  readonly byHand?: Partial<Omit<EstimateContent, 'choices'>>;
}

const found = (draw: () => string, caption: string) => ({ draw, caption, stage: 'found' as const });
const noNails = { flush: 0, overdrivenSlight: 0, overdriven: 0, overdrivenDeep: 0, nearEdge: 0, missed: 0 };

export const findings: readonly DemoFinding[] = [
  {
    key: 'bath-plate',
    place: 'bath-wall',
    checkId: 'cut.top-plate',
    title: 'Top plate cut for the drain',
    note: 'The old drain goes straight through both plates. The new one stays in the same place.',
    seen: { daysAgo: 9, time: '08:41:12' },
    extent: { xIn: 52, yIn: 93.5, widthIn: 6, heightIn: 3.6 },
    inputs: { widthIn: 3.5, cutIn: 2.25, code: 'irc', bearingOrBraced: true, inShearWall: false },
    photos: [found(scenes.cutPlate, 'Both plates cut at the drain')],
  },
  {
    key: 'garage-rod-left',
    place: 'garage-wall',
    checkId: 'anchor.thread-engagement',
    title: 'Left hold-down rod is short',
    note: 'The rod stops inside the nut.',
    seen: { daysAgo: 6, time: '09:05:30' },
    extent: { xIn: 2, yIn: 0, widthIn: 10, heightIn: 17 },
    inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: -0.125, rule: 'flush' },
    photos: [
      found(scenes.holdDownWall, 'North wall from the door'),
      found(scenes.rodInNut, 'Rod end 1/8 in below the nut face'),
    ],
  },
  {
    key: 'garage-rod-right',
    place: 'garage-wall',
    checkId: 'anchor.thread-engagement',
    title: 'Right hold-down rod barely holds',
    note: 'Less than half of the nut is on the rod.',
    seen: { daysAgo: 6, time: '09:11:02' },
    extent: { xIn: 136, yIn: 0, widthIn: 10, heightIn: 17 },
    inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: -0.3125, rule: 'flush' },
    photos: [],
  },
  {
    key: 'garage-nails',
    place: 'garage-wall',
    checkId: 'shear-wall.nail-survey',
    title: 'Panel nails driven too deep',
    note: 'One panel, all four edges counted. Two nails missed the stud.',
    seen: { daysAgo: 6, time: '09:26:47' },
    extent: { xIn: 48, yIn: 0, widthIn: 48, heightIn: 96 },
    inputs: {
      panelThicknessIn: 0.46875,
      specifiedSpacingIn: 6,
      surveyedLengthIn: 288,
      panelDry: true,
      counts: { ...noNails, flush: 27, overdrivenSlight: 3, overdriven: 14, nearEdge: 2, missed: 2 },
    },
    photos: [found(scenes.panelWall, 'The panel in its wall'), found(scenes.panelNails, 'Nail heads along the joint')],
    byHand: {
      overrides: [
        { operation: 'panel-nails', quantity: 16, why: 'Counted again on site: five more at the middle stud' },
      ],
      manualLines: [
        {
          kind: 'allowance',
          title: 'Wall finish to match the rest of the garage',
          titleEs: 'Acabado de pared igual al resto del garaje',
          quantity: 1,
          unit: 'each',
          unitCents: 38_000,
          why: 'The finish is not chosen yet',
        },
      ],
      exclusions: [
        {
          en: 'Painting the rest of the garage.',
          es: 'Pintar el resto del garaje.',
        },
      ],
      alternates: [
        {
          kind: 'replace',
          name: { en: 'A new panel instead of more nails', es: 'Un panel nuevo en vez de más clavos' },
          choices: [
            { repairId: 'panel-replace', quantities: {} },
            { repairId: 'engineer-letter', quantities: {} },
          ],
          manualLines: [],
          overrides: [],
        },
      ],
    },
  },
  {
    key: 'garage-plate',
    place: 'garage-wall',
    checkId: 'cut.top-plate',
    title: 'Top plate gouged in the braced wall',
    note: 'An old vent went through here. The wall braces the house.',
    seen: { daysAgo: 6, time: '09:40:19' },
    extent: { xIn: 100, yIn: 93.5, widthIn: 8, heightIn: 3.6 },
    inputs: { widthIn: 3.5, cutIn: 2.5, code: 'irc', bearingOrBraced: true, inShearWall: true },
    photos: [],
  },
  {
    key: 'beam-seat',
    place: 'kitchen-beam',
    checkId: 'bearing.seat',
    title: 'Beam end hardly on its post',
    note: 'The beam sits on the edge of the plate, and nothing ties it down.',
    seen: { daysAgo: 2, time: '10:02:55' },
    extent: { xIn: 178, yIn: 0, widthIn: 8, heightIn: 11.875 },
    inputs: {
      widthIn: 3.5,
      bearingLengthIn: 0.625,
      support: 'steel',
      species: 'douglas-fir-larch',
      reactionLb: 4200,
      positiveConnection: false,
      expectedMovementIn: 0.75,
      atMemberEnd: true,
    },
    context: { occupiedBelow: true, shored: false },
    photos: [found(scenes.beamRoom, 'Beam and post in the kitchen'), found(scenes.beamSeat, '5/8 in of bearing')],
  },
  {
    key: 'joist-hanger',
    place: 'kitchen-joists',
    checkId: 'connection.hanger',
    title: 'Hanger wider than its joist',
    note: 'Made for a doubled joist; six of ten nails in the header.',
    seen: { daysAgo: 2, time: '10:20:08' },
    extent: { xIn: 80, yIn: 0, widthIn: 6, heightIn: 12 },
    inputs: {
      memberWidthIn: 1.5,
      hangerWidthIn: 3.125,
      seatGapIn: 0.25,
      endGapIn: 0.125,
      header: { specified: 10, installed: 6 },
      joist: { specified: 6, installed: 4 },
      rightFastener: true,
      loose: false,
    },
    photos: [found(scenes.wideHanger, 'Hanger and joist')],
  },
  {
    key: 'joist-line',
    place: 'kitchen-joists',
    checkId: 'movement.shrinkage',
    title: 'New and old joists under one floor',
    note: 'Somebody put two I-joists between the old sawn ones. The floor shows a wave.',
    seen: { daysAgo: 2, time: '10:44:31' },
    extent: { xIn: 40, yIn: 10, widthIn: 90, heightIn: 130 },
    inputs: {
      members: [
        { name: 'joist 3 (sawn)', kind: 'sawn', grain: 'mixed', sizeIn: 9.25, fromPct: 19, toPct: 8 },
        { name: 'joist 4 (I-joist)', kind: 'i-joist', sizeIn: 9.5, fromPct: 12, toPct: 8 },
      ],
      spacingIn: 16,
      toleranceIn: 0.125,
    },
    photos: [found(scenes.joistLine, 'Sawn joists and I-joists in one line')],
  },
  {
    key: 'rotten-beam',
    place: 'dining-wall',
    checkId: 'decay.section-loss',
    title: 'Header soft where it meets the masonry',
    note: 'Probed with an awl; soft for 1 in from the bottom.',
    seen: { daysAgo: 1, time: '13:15:44' },
    extent: { xIn: 40, yIn: 82, widthIn: 56, heightIn: 9.25 },
    inputs: {
      widthIn: 3.5,
      depthIn: 9.25,
      lossTopIn: 0,
      lossBottomIn: 1,
      lossSideIn: 0,
      marginIn: 0.25,
      role: 'bending',
    },
    photos: [found(scenes.rottenBeam, 'Soft wood at the masonry')],
  },
  {
    key: 'window-paint',
    place: 'dining-wall',
    checkId: 'hazard.lead',
    title: 'Old paint at the dining room window',
    note: 'Loose paint on the stool and apron. Nobody has touched it.',
    seen: { daysAgo: 1, time: '13:31:20' },
    extent: { xIn: 42, yIn: 26, widthIn: 52, heightIn: 8 },
    inputs: {
      yearBuilt: 1956,
      interiorSf: [{ name: 'dining room', areaSf: 8 }],
      exteriorSf: 0,
      demolition: false,
      windowReplaced: false,
    },
    photos: [found(scenes.oldPaint, 'Paint in scales on the stool')],
    priced: false,
  },
  {
    key: 'dining-rod',
    place: 'dining-wall',
    checkId: 'anchor.thread-engagement',
    title: 'Hold-down rod looked at and right',
    note: 'Looked at because the garage ones are short.',
    seen: { daysAgo: 1, time: '13:40:00' },
    extent: { xIn: 2, yIn: 0, widthIn: 10, heightIn: 17 },
    inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: 0.375, rule: 'flush' },
    photos: [],
    priced: false,
  },
  {
    key: 'garage-stud',
    place: 'garage-wall',
    checkId: 'cut.stud',
    title: 'Stud notched under the gouged plate',
    note: 'The same vent: the stud below it is cut on the room side.',
    seen: { daysAgo: 5, time: '08:20:36' },
    extent: { xIn: 111, yIn: 70, widthIn: 2, heightIn: 24 },
    inputs: { depthIn: 3.5, bearing: true, notchIn: 1.25, holeIn: 0 },
    photos: [],
  },
];

/** Notices that went out; what is not named here still waits for its own. */
export const notices = [
  {
    findings: ['bath-plate'],
    daysAgo: 8,
    method: 'letter',
    text: 'Left with the client at the door, a copy in the site folder.',
  },
  {
    findings: ['garage-rod-left', 'garage-rod-right', 'garage-nails'],
    daysAgo: 5,
    method: 'letter',
    text: 'One letter for the three findings of that morning, posted the next day.',
  },
  {
    findings: ['garage-stud'],
    daysAgo: 4,
    method: 'letter',
    text: 'Left with the client at the door the day after it was found.',
  },
  {
    findings: ['beam-seat'],
    daysAgo: 2,
    method: 'in-person',
    text: 'Told in the kitchen, standing under the beam. The letter has still to follow.',
  },
] as const;

export const approvedOrder = { findings: ['bath-plate'], signer: 'Philippa Arden-Rowe' };
export const sentOrder = {
  findings: ['garage-rod-left', 'garage-rod-right', 'garage-nails', 'garage-plate'],
  question: 'Can the car stay in the garage while you do this?',
};
export const draftOrder = { findings: ['beam-seat', 'joist-hanger'] };

type DemoLink = Pick<KeptLink, 'name' | 'role' | 'state'> &
  Partial<Omit<KeptLink, 'findingIds' | 'photoId'>> & {
    /** Keys of its findings. */
    readonly findings?: readonly string[];
    /** The finding whose first photo shows it sound. */
    readonly photoOf?: string;
  };
interface DemoLoadPath extends Pick<StoredLoadPath, 'name' | 'kind' | 'demandLb' | 'capacitiesFrom'> {
  readonly place: string;
  readonly segment: Omit<KeptSegment, 'links'>;
  readonly links: readonly DemoLink[];
}

const scheduled = 'sheet S-3 of the invented drawings';

/** Loads and strengths are those of an invented engineer's schedule. */
export const loadPaths: readonly DemoLoadPath[] = [
  {
    place: 'garage-wall',
    name: 'Garage, north wall',
    kind: 'wall-line',
    demandLb: 2600,
    capacitiesFrom: scheduled,
    segment: { name: 'North wall', fromIn: 0, lengthFt: 12.375, heightFt: 8.09375 },
    links: [
      {
        name: 'Top plate',
        role: 'top-plate',
        state: 'findings',
        findings: ['garage-plate'],
        intendedLb: 4000,
        at: { xIn: 0, yIn: 94.125, widthIn: 148.5, heightIn: 3 },
      },
      {
        name: 'Panels and nails',
        role: 'panels',
        state: 'findings',
        findings: ['garage-nails'],
        intendedLb: 3200,
        at: { xIn: 0, yIn: 3, widthIn: 148.5, heightIn: 91 },
      },
      { name: 'End posts', role: 'posts', state: 'unseen', intendedLb: 3400 },
      {
        name: 'Hold-down, left',
        role: 'hold-down',
        state: 'findings',
        findings: ['garage-rod-left'],
        tensionLb: 2200,
        leverFt: 11.75,
        at: { xIn: 0, yIn: 1.5, widthIn: 6, heightIn: 20 },
      },
      {
        name: 'Hold-down, right',
        role: 'hold-down',
        state: 'findings',
        findings: ['garage-rod-right'],
        tensionLb: 2200,
        leverFt: 11.75,
        at: { xIn: 142.5, yIn: 1.5, widthIn: 6, heightIn: 20 },
      },
      {
        name: 'Sill bolts',
        role: 'sill-bolts',
        state: 'sound',
        photoOf: 'garage-rod-left',
        intendedLb: 3600,
        at: { xIn: 8, yIn: 0, widthIn: 132, heightIn: 1.5 },
      },
      { name: 'Footing', role: 'footing', state: 'unseen' },
    ],
  },
  {
    place: 'kitchen-beam',
    name: 'Kitchen beam',
    kind: 'gravity-line',
    demandLb: 4200,
    capacitiesFrom: scheduled,
    segment: { name: 'Floor to footing', fromIn: null },
    links: [
      { name: 'Joists', role: 'member', state: 'unseen' },
      { name: 'Hangers', role: 'hanger', state: 'unseen', parts: { total: 24, opened: 3, bad: 1 } },
      { name: 'Beam', role: 'beam', state: 'unseen', intendedLb: 5200 },
      { name: 'Beam seat', role: 'seat', state: 'findings', findings: ['beam-seat'], intendedLb: 4600 },
      { name: 'Post', role: 'post', state: 'unseen' },
      { name: 'Footing', role: 'footing', state: 'unseen' },
    ],
  },
];
