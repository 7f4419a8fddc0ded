import { at, found, type Story } from './story.ts';

/** A small job from the contract to its end: a sink moved to the window, one stud that an old gas line had eaten, and the last payment. */
export const dunmuirCottage: Story = {
  project: {
    name: 'Dunmuir cottage',
    siteAddress: '6 Net House Lane, Corran Landing, NY 00000',
    clientName: 'Coralie Dunmuir',
    clientEmail: 'coralie@dunmuir.example',
    yearBuilt: 1952,
    stories: 1,
    originalSumCents: 2_274_000,
    originalDays: 18,
    contingencyCents: 150_000,
  },
  startDaysAgo: 116,
  terms: {
    retainagePct: 0,
    noticeDays: 5,
    dayOffDaysAgo: 101,
    payments: [
      { key: 'start', name: 'Start of work', cents: 568_500 },
      { key: 'closed', name: 'Walls closed', cents: 1_137_000 },
      { key: 'end', name: 'Sink running, site clean', cents: 568_500 },
    ],
  },
  entries: [
    { kind: 'payment', name: 'Start of work', daysAgo: 116, cents: 568_500, settles: 'start' },
    { kind: 'completed', name: 'Kitchen wall opened and closed', daysAgo: 96, cents: 1_705_500 },
    { kind: 'payment', name: 'Walls closed', daysAgo: 95, cents: 1_137_000, settles: 'closed' },
    { kind: 'completed', name: 'Sink, window and trim', daysAgo: 88, cents: 568_500 },
    { kind: 'payment', name: 'Sink running, site clean', daysAgo: 86, cents: 568_500, settles: 'end' },
    { kind: 'rest', name: 'Final payment, the doubled stud', daysAgo: 85 },
  ],
  places: [
    { key: 'kitchen', kind: 'room', name: 'Kitchen' },
    {
      key: 'sink-wall',
      in: 'kitchen',
      kind: 'wall',
      name: 'Kitchen, sink wall',
      widthIn: 118,
      heightIn: 94.5,
      framingSpacingIn: 16,
      memberDepthIn: 3.5,
      openings: [{ name: 'window', xIn: 46, yIn: 42, widthIn: 34, heightIn: 40 }],
    },
  ],
  findings: [
    {
      key: 'bored-stud',
      place: 'sink-wall',
      checkId: 'cut.stud',
      title: 'Stud bored for a gas line that is gone',
      note: 'Capped in the cellar, the gas company has been here. The stud carries the roof.',
      seen: at(109, '10:12:40'),
      extent: { xIn: 31, yIn: 20, widthIn: 3, heightIn: 26 },
      inputs: {
        depthIn: 3.5,
        bearing: true,
        notchIn: 0,
        holeIn: 1.75,
        edgeIn: 0.875,
        doubled: false,
        sameSection: false,
      },
      photos: [found('bored-stud', '1 3/4 in hole in a 2x4 that carries the roof')],
      repaired: {
        on: at(99, '14:30:00'),
        photos: [{ picture: 'doubled-stud', caption: 'A whole stud nailed beside it', stage: 'before-cover' }],
        took: [
          {
            operation: 'sister-member',
            quantity: 8,
            hours: 1.75,
            costCents: 1_460,
            note: 'One stud, nailed from both ends',
          },
        ],
        measuredAgain: {
          on: at(99, '15:05:00'),
          inputs: {
            depthIn: 3.5,
            bearing: true,
            notchIn: 0,
            holeIn: 1.75,
            edgeIn: 0.875,
            doubled: true,
            sameSection: false,
          },
        },
      },
    },
  ],
  loadPaths: [],
  notices: [
    {
      findings: ['bored-stud'],
      on: at(108, '08:15:00'),
      method: 'letter',
      text: 'Handed over at the kitchen table, a copy in the site folder.',
    },
  ],
  orders: [
    {
      findings: ['bored-stud'],
      made: at(107, '16:20:00'),
      headline: {
        en: 'The stud beside your sink window needs a whole one next to it',
        es: 'El pie derecho junto a la ventana del fregadero necesita uno entero al lado',
      },
      sent: at(107, '16:45:00'),
      approved: { on: at(106, '19:10:00') },
    },
  ],
};
