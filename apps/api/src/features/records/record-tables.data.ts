/** A table whose rows the events of a project tell of. */
interface RecordTable {
  /** One of its rows, in words. */
  readonly title: string;
  /** Which rows belong to a project, as SQL about the row `t`; `$2` is the project. */
  readonly ofProject: string;
  /** What a row is known by. */
  readonly key: readonly string[];
  /** Columns, and hashes of columns, that must be as the events told. */
  readonly compared: readonly string[];
  /** Columns that are not compared, and why. */
  readonly left: Readonly<Record<string, string>>;
}

const byProject = 't.project_id = $2::uuid';
const ofFinding =
  'exists (select 1 from finding f where f.company_id = t.company_id and f.id = t.finding_id and f.project_id = $2::uuid)';
const ofOrder =
  'exists (select 1 from change_order o where o.company_id = t.company_id and o.id = t.change_order_id and o.project_id = $2::uuid)';

const counter = 'counts writes';
const arrival = 'when the row arrived, by the clock of the database';
const hashed = 'compared by its hash';
const own = 'how the row was found';
const device = 'sessions are not part of what is replayed';
const draft = 'of a draft; what goes out is frozen in the document';

/** What verifying reads. A column stands in one of the two lists; a test holds them to the database. */
export const recordTables = {
  project: {
    title: 'project',
    ofProject: 't.id = $2::uuid',
    key: ['id'],
    compared: [
      'name',
      'siteAddress',
      'clientName',
      'clientEmail',
      'clientLocale',
      'yearBuilt',
      'stories',
      'originalSumCents',
      'originalDays',
      'startOn',
      'codeEdition',
      'standardEditions',
      'jurisdiction',
      'siteState',
      'timeZone',
      'contingencyCents',
    ],
    left: { version: counter, createdAt: arrival, updatedAt: arrival },
  },
  location: {
    title: 'place',
    ofProject: byProject,
    key: ['id'],
    compared: [
      'parentId',
      'kind',
      'name',
      'position',
      'widthIn',
      'heightIn',
      'framingSpacingIn',
      'memberDepthIn',
      'storiesAbove',
      'openings',
      'existing',
      'edgeNailSpacingIn',
      'fieldNailSpacingIn',
    ],
    left: { version: counter, createdAt: arrival, projectId: own },
  },
  load_path: {
    title: 'load path',
    ofProject: byProject,
    key: ['id'],
    compared: [
      'locationId',
      'kind',
      'name',
      'storiesAbove',
      'storyShare',
      'shored',
      'demandLb',
      'capacitiesFrom',
      'lineAboveId',
      'floorDepthIn',
      'segments',
      'createdAt',
      'changedAt',
    ],
    left: { version: counter, projectId: own },
  },
  photo: {
    title: 'photo',
    ofProject: byProject,
    key: ['id'],
    compared: [
      'locationId',
      'stage',
      'caption',
      'sha256',
      'byteCount',
      'mediaType',
      'widthPx',
      'heightPx',
      'deviceTime',
      'deviceOffset',
      'uploadedById',
      'derivativeState',
      'derivativeReason',
      'viewSha256',
    ],
    left: { version: counter, receivedAt: arrival, projectId: own, fileKey: 'the bytes it leads to are compared' },
  },
  finding: {
    title: 'finding',
    ofProject: byProject,
    key: ['id'],
    compared: [
      'locationId',
      'number',
      'checkId',
      'title',
      'note',
      'state',
      'stateReason',
      'extent',
      'context',
      'verdict',
      'severity',
      'seenAt',
      'createdById',
      'estimate',
    ],
    left: { version: counter, createdAt: arrival, projectId: own },
  },
  finding_photo: {
    title: 'link of finding and photo',
    ofProject: ofFinding,
    key: ['findingId', 'photoId'],
    compared: [],
    left: { addedAt: arrival },
  },
  judgment: {
    title: 'judgment',
    ofProject: ofFinding,
    key: ['id'],
    compared: ['findingId', 'seq', 'sha256', 'judgedAt', 'judgedById'],
    left: {
      checkId: hashed,
      rulesVersion: hashed,
      edition: hashed,
      inputs: hashed,
      context: hashed,
      outcome: hashed,
      verdict: hashed,
      severity: hashed,
    },
  },
  actual: {
    title: 'entry of what a repair took',
    ofProject: byProject,
    key: ['id'],
    compared: [
      'findingId',
      'operation',
      'unit',
      'quantity',
      'hours',
      'costCents',
      'note',
      'doneOn',
      'enteredAt',
      'enteredById',
      'takenBackAt',
      'takenBackWhy',
    ],
    left: { projectId: own },
  },
  contract_terms: {
    title: 'terms of the contract',
    ofProject: byProject,
    key: ['projectId'],
    compared: [
      'version',
      'retainagePct',
      'netDecreaseReturns',
      'dayKind',
      'daysOff',
      'noticeDays',
      'noticeDayKind',
      'noticeMethods',
      'milestones',
      'changedAt',
    ],
    left: {},
  },
  contract_entry: {
    title: 'entry of the contract',
    ofProject: byProject,
    key: ['id'],
    compared: [
      'kind',
      'name',
      'happenedOn',
      'cents',
      'allowedCents',
      'spentCents',
      'overheadProfitPct',
      'milestoneId',
      'enteredAt',
      'enteredById',
      'takenBackAt',
      'takenBackWhy',
    ],
    left: { projectId: own },
  },
  notice: {
    title: 'notice',
    ofProject: byProject,
    key: ['id'],
    compared: ['findingId', 'method', 'sentOn', 'sentTo', 'textSha256', 'enteredAt', 'enteredById'],
    left: { projectId: own, text: hashed, mailId: 'mails are not part of what is replayed' },
  },
  change_order: {
    title: 'change order',
    ofProject: byProject,
    key: ['id'],
    compared: [
      'number',
      'state',
      'days',
      'sentVersion',
      'totalCents',
      'decidedAt',
      'createdAt',
      'createdById',
      'wordingSha256',
    ],
    left: { version: counter, projectId: own, wording: hashed, typed: draft, marks: draft, spanish: draft },
  },
  change_order_finding: {
    title: 'finding in a change order',
    ofProject: ofOrder,
    key: ['changeOrderId', 'findingId'],
    compared: ['position'],
    left: {},
  },
  change_order_version: {
    title: 'sent version',
    ofProject: ofOrder,
    key: ['changeOrderId', 'version'],
    compared: ['sha256', 'sentAt', 'sentById'],
    left: { document: hashed },
  },
  decision: {
    title: 'decision',
    ofProject: ofOrder,
    key: ['changeOrderId', 'version'],
    compared: [
      'kind',
      'signerName',
      'letterFor',
      'reason',
      'sha256',
      'consentId',
      'consentSha256',
      'acknowledged',
      'decidedAt',
      'findingIds',
      'linkId',
      'locale',
      'userAgentSha256',
      'contract',
    ],
    left: { id: 'nothing refers to it', sessionId: device, consentText: hashed, userAgent: hashed },
  },
  question: {
    title: 'question',
    ofProject: ofOrder,
    key: ['id'],
    compared: ['changeOrderId', 'version', 'name', 'text', 'askedAt', 'answer', 'answeredAt', 'answeredById'],
    left: {},
  },
} as const satisfies Record<string, RecordTable>;

export type TableName = keyof typeof recordTables;
export const tableNames = Object.keys(recordTables) as TableName[];
export const tableOf = (name: TableName): RecordTable => recordTables[name];

/** Tables that say what is owed. */
export const moneyTables: readonly TableName[] = [
  'project',
  'contract_terms',
  'contract_entry',
  'change_order',
  'actual',
];
