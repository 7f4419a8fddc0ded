/** What a verification went through. */
export interface VerifiedCounts {
  companies: number;
  /** Those of which nothing was recorded yet, so that their projects and books stand in no list. */
  companiesWithoutRecord: number;
  projects: number;
  projectsWithoutWitness: number;
  events: number;
  rows: number;
  moneyRows: number;
  documents: number;
  decisions: number;
  costBooks: number;
  photos: number;
  views: number;
  /** Known from outside of the database. */
  witnesses: number;
  agreed: number;
  untold: Map<string, number>;
  otherKinds: Set<string>;
}

export const newCounts = (): VerifiedCounts => ({
  companies: 0,
  companiesWithoutRecord: 0,
  projects: 0,
  projectsWithoutWitness: 0,
  events: 0,
  rows: 0,
  moneyRows: 0,
  documents: 0,
  decisions: 0,
  costBooks: 0,
  photos: 0,
  views: 0,
  witnesses: 0,
  agreed: 0,
  untold: new Map(),
  otherKinds: new Set(),
});

/** The last line of a verification: what was compared, what was not, what is known of the ends of the records, and the result. */
export function sayCompared(counts: VerifiedCounts, faults: number): string {
  const result = faults === 0 ? 'No fault in what was compared.' : `${count(faults, 'fault')}.`;
  return [sayWhat(counts), sayNot(counts), sayEnds(counts), result].join(' ');
}

function sayWhat(counts: VerifiedCounts): string {
  const parts = [
    `${count(counts.projects, 'project')} of ${count(counts.companies, 'company', 'companies')}`,
    count(counts.events, 'event'),
    `${count(counts.rows, 'row')} that events made (${counts.moneyRows} of them money)`,
    count(counts.documents, 'sent document'),
    count(counts.decisions, 'decision'),
    count(counts.costBooks, 'cost book'),
    count(counts.photos, 'original photo'),
    count(counts.views, 'view'),
  ];
  return `Compared ${parts.join(', ')}.`;
}

/** The columns that no event tells; `record-tables.data.ts` names each with its reason. */
const TIMES_OF_ARRIVAL = 'when rows arrived by the clock of the database';

function sayNot({ untold, otherKinds, companiesWithoutRecord }: VerifiedCounts): string {
  const parts = [
    'people and their sign-in',
    'company details',
    'client links and sessions',
    'mails',
    'thumbnails',
    TIMES_OF_ARRIVAL,
  ];
  for (const [what, rows] of untold) parts.push(`${what} (not told by the events of ${count(rows, 'row')})`);
  for (const kind of otherKinds) parts.push(`what events of kind ${kind} made`);
  if (companiesWithoutRecord > 0) {
    const companies = count(companiesWithoutRecord, 'company', 'companies');
    parts.push(`the list of projects and cost books of ${companies} of which nothing was recorded yet`);
  }
  return `Not compared: ${parts.join(', ')}.`;
}

/** The end of a record is told only from outside: within the database it can be cut without a trace. */
function sayEnds({ witnesses, agreed, projectsWithoutWitness }: VerifiedCounts): string {
  if (witnesses === 0) return 'Ends: no witness, so the removed end of a record would not show.';
  const all =
    agreed === witnesses
      ? `${count(witnesses, 'witness agrees', 'witnesses agree')}`
      : `${agreed} of ${count(witnesses, 'witness', 'witnesses')} agree`;
  const none =
    projectsWithoutWitness > 0
      ? `; ${count(projectsWithoutWitness, 'project has', 'projects have')} none, so a removed end would not show there`
      : '';
  return `Ends: ${all}${none}; what came after the newest witness of a record could be removed unseen.`;
}

const count = (number: number, one: string, many = `${one}s`): string => `${number} ${number === 1 ? one : many}`;
