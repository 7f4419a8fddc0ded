import { type ApiKey, type Invitation, type LocationKind, type Role, routes } from '@underlath/contract';
import { OPERATIONS } from '@underlath/rules';
import {
  CHANGE_ORDER_WORDS,
  FINDING_STATES,
  FINDING_WORDS,
  PHOTO_STAGES,
  PHOTO_WORDS,
  SEVERITIES,
  SEVERITY_WORDS,
} from '@underlath/rules/kernel';

/** The desk's words for the values of the contract. */
export const findingStateWord = (state: keyof typeof FINDING_WORDS): string => FINDING_WORDS[state].en;
export const changeOrderWord = (state: keyof typeof CHANGE_ORDER_WORDS): string => CHANGE_ORDER_WORDS[state].en;
export const stageWord = (stage: keyof typeof PHOTO_WORDS): string => PHOTO_WORDS[stage].en;

export const severityOptions = SEVERITIES.map((value) => ({ value, label: SEVERITY_WORDS[value].en }));
export const findingStateOptions = FINDING_STATES.map((value) => ({ value, label: FINDING_WORDS[value].en }));
export const stageOptions = PHOTO_STAGES.map((value) => ({ value, label: PHOTO_WORDS[value].en }));

export const codeEditionWords = [
  { value: 'irc-2024', label: 'IRC 2024' },
  { value: 'irc-2021', label: 'IRC 2021' },
  { value: 'irc-2018', label: 'IRC 2018' },
  { value: 'irc-2015', label: 'IRC 2015' },
  { value: 'irc-2012', label: 'IRC 2012' },
  { value: 'ibc-2015', label: 'IBC 2015' },
  { value: 'ibc-2009', label: 'IBC 2009' },
];

export const kindWords: Record<LocationKind, string> = {
  story: 'Story',
  room: 'Room',
  wall: 'Wall',
  floor: 'Floor',
  roof: 'Roof',
  'beam-line': 'Beam line',
};
export const kindOptions = (Object.keys(kindWords) as LocationKind[]).map((value) => ({
  value,
  label: kindWords[value],
}));

export const roleWords: Record<Role, string> = { owner: 'Owner', estimator: 'Estimator', crew: 'Crew' };
export const roleOptions = (Object.keys(roleWords) as Role[]).map((value) => ({ value, label: roleWords[value] }));

/** States in which a finding no longer needs anyone. */
const closedStates = new Set(['repaired', 'proven', 'withdrawn']);
export const isClosed = (state: string): boolean => closedStates.has(state);

/** A key that works now. */
export const isLiveKey = ({ revokedAt, expiresAt }: ApiKey): boolean =>
  revokedAt === null && new Date(expiresAt) > new Date();
/** An invitation whose link works now. */
export const isOpenInvitation = ({ acceptedAt, revokedAt, expiresAt }: Invitation): boolean =>
  acceptedAt === null && revokedAt === null && new Date(expiresAt) > new Date();

export const plural = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

const units: Record<string, string> = { sf: 'sq ft', lf: 'ft' };
/** A cost book's unit as it is said: `sf` is `sq ft`. */
export const unitWords = (unit: string): string => units[unit] ?? unit;

export const operationWords = (id: string): string =>
  OPERATIONS.find((operation) => operation.id === id)?.title.en ?? id;

/** What is read again when a version of the cost book was saved. */
export const bookReads = [
  routes.getCostBook,
  routes.listCostBooks,
  routes.getEstimate,
  routes.getChangeOrder,
  routes.getPlaceScope,
];
