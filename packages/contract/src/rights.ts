import type { Role } from './common.ts';
import type { KeyUse } from './members.ts';
import type { CompanySwitch, Route } from './route.ts';

export type CompanySwitches = Readonly<Record<CompanySwitch, boolean>>;

/** Who asks: a member in person, or an API key with the role it has now and what it is for. */
export interface Asker {
  readonly kind: 'member' | 'api-key';
  readonly role: Role;
  readonly use: KeyUse;
  readonly switches: CompanySwitches;
}

const ranks: Readonly<Record<Role, number>> = { crew: 0, estimator: 1, owner: 2 };

export const lowerRole = (one: Role, other: Role): Role => (ranks[one] < ranks[other] ? one : other);

/** Why somebody of a company may not call a route; null when they may. */
export type Refusal = 'in-person' | 'role' | 'key-reads' | 'key-photos';

/** The one rule of who may do what, for routes that are not public and not for clients. */
export function refusalOf({ permission, method }: Pick<Route, 'permission' | 'method'>, asker: Asker): Refusal | null {
  const { kind, role, use, switches } = asker;
  if (permission === 'public' || permission === 'client-link') return null;
  if (permission === 'session') return kind === 'member' ? null : 'in-person';
  const { roles, session, photos, opens } = permission;
  if (session && kind !== 'member') return 'in-person';
  const isOpened = opens !== undefined && opens.role === role && switches[opens.switch];
  if (!roles.includes(role) && !isOpened) return 'role';
  if (kind === 'member' || use === 'full') return null;
  if (use === 'photos') return photos ? null : 'key-photos';
  return method === 'GET' ? null : 'key-reads';
}

/** Whether prices, contract sums and the client's e-mail address are shown. */
export const seesMoney = ({ role, switches }: Pick<Asker, 'role' | 'switches'>): boolean =>
  role !== 'crew' || switches.crewSeesMoney;

const ofProject = ['originalSumCents', 'contingencyCents', 'clientEmail'];
const ofFinding = ['linesCents'];
const each = (fields: readonly string[]): string[] => fields.map((field) => `items.${field}`);

/**
 * What is null for whom money is not shown to: fields by route, as a path into its answer that goes through lists.
 * Routes that crew may not call at all are not here. A test looks for money and mail addresses in every answer.
 */
export const withheld: Readonly<Record<string, readonly string[]>> = {
  listProjects: each(ofProject),
  getProject: ofProject,
  projectOverview: ['contract', ...ofProject.map((field) => `project.${field}`)],
  listFindings: each(ofFinding),
  createFinding: ofFinding,
  getFinding: ofFinding,
  changeFinding: ofFinding,
  judgeFinding: ofFinding,
  attachPhotos: ofFinding,
  moveFinding: ofFinding,
  getNotice: ['sent.sentTo', 'draft.to'],
};

/** The answer without what is withheld; the answer itself stays as it is. */
export function withhold<A>(answer: A, paths: readonly string[]): A {
  return paths.reduce<unknown>((kept, path) => blank(kept, path.split('.')), answer) as A;
}

function blank(value: unknown, [field = '', ...rest]: string[]): unknown {
  if (Array.isArray(value)) return value.map((one) => blank(one, [field, ...rest]));
  if (typeof value !== 'object' || value === null || !(field in value)) return value;
  return { ...value, [field]: rest.length > 0 ? blank((value as Record<string, unknown>)[field], rest) : null };
}
