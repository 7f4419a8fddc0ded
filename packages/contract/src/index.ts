import { accountRoutes } from './accounts.ts';
import { actualRoutes } from './actuals.ts';
import { changeOrderRoutes, clientRoutes } from './change-orders.ts';
import { checkRoutes } from './checks.ts';
import { contractRoutes } from './contract.ts';
import { findingRoutes } from './findings.ts';
import { loadPathRoutes } from './load-paths.ts';
import { locationRoutes } from './locations.ts';
import { mailRoutes } from './mails.ts';
import { memberRoutes } from './members.ts';
import { noticeRoutes } from './notices.ts';
import { peopleLogRoutes } from './people-log.ts';
import { photoRoutes } from './photos.ts';
import { priceEvaluateRoutes } from './price-evaluate.ts';
import { priceRoutes } from './prices.ts';
import { projectRoutes } from './projects.ts';
import { recordRoutes } from './record.ts';
import { scopeRoutes } from './scopes.ts';

export * from '@underlath/rules/documents';
export {
  hasNoMarks,
  hasOnlyBreaks,
  isPersonName,
  isSameName,
  showsLetter,
  showsLetterOrDigit,
} from '@underlath/rules/schemas';
export * from './accounts.ts';
export * from './actuals.ts';
export * from './app-addresses.ts';
export * from './change-orders.ts';
export * from './checks.ts';
export * from './common.ts';
export * from './contract.ts';
export * from './findings.ts';
export * from './load-paths.ts';
export * from './locations.ts';
export * from './mails.ts';
export * from './members.ts';
export * from './notices.ts';
export * from './people-log.ts';
export * from './photos.ts';
export * from './price-evaluate.ts';
export * from './prices.ts';
export * from './problems.ts';
export * from './projects.ts';
export * from './record.ts';
export * from './rights.ts';
export * from './route.ts';
export * from './scopes.ts';
export * from './us-states.ts';
export * from './us-time-zones.ts';

/** The routes of each part of the work, as the description of the API lists them. */
export const routesByPart = {
  'Signing in and accounts': accountRoutes,
  'Company and people': memberRoutes,
  'Log of people': peopleLogRoutes,
  Projects: projectRoutes,
  Places: locationRoutes,
  Photos: photoRoutes,
  Checks: checkRoutes,
  Findings: findingRoutes,
  'Load paths': loadPathRoutes,
  'Repair scopes': scopeRoutes,
  'Prices and cost book': priceRoutes,
  'Price and contract calculations': priceEvaluateRoutes,
  'Hours and cost spent': actualRoutes,
  Notices: noticeRoutes,
  Contract: contractRoutes,
  'Change orders': changeOrderRoutes,
  'Letters of clients': clientRoutes,
  'Sent mail': mailRoutes,
  Record: recordRoutes,
} as const;

/** Every route of the API, by name. */
export const routes = {
  ...accountRoutes,
  ...memberRoutes,
  ...projectRoutes,
  ...locationRoutes,
  ...photoRoutes,
  ...checkRoutes,
  ...loadPathRoutes,
  ...findingRoutes,
  ...scopeRoutes,
  ...priceRoutes,
  ...priceEvaluateRoutes,
  ...actualRoutes,
  ...noticeRoutes,
  ...contractRoutes,
  ...changeOrderRoutes,
  ...clientRoutes,
  ...mailRoutes,
  ...recordRoutes,
  ...peopleLogRoutes,
} as const;
