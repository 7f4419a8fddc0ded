import type { DemoAccess } from '../apps/api/src/commands/demo-access.ts';
import { createDeps } from '../apps/api/src/deps.ts';
import type { Session } from '../apps/api/src/features/accounts/sign-in.service.ts';
import type { From } from '../apps/api/src/features/members/members.service.ts';
import type { Platform } from '../apps/api/src/platform/platform.ts';
import { StartupError } from '../apps/api/src/platform/startup-error.ts';
import type { Caller } from '../apps/api/src/shared/caller.ts';
import { brandmeerHouse } from './brandmeer-house.ts';
import { dunmuirCottage } from './dunmuir-cottage.ts';
import * as story from './story.ts';
import { StoryClock } from './story-clock.ts';
import { StoryTeller, type Tellers } from './tell.ts';

/**
 * Fills an empty database with two invented houses, through the same services that people use: every judgment is a real
 * one, every photo went through the real intake, and the clients answered over real links, each on the day of the story.
 * @throws StartupError when the database holds anything
 */
export async function seedDemo(platform: Platform): Promise<DemoAccess> {
  const { rowCount } = await platform.database.ownerPool.query('select 1 from company limit 1');
  if (rowCount)
    throw new StartupError('The database is not empty, so the demo was not written; use an empty database.');
  const clock = new StoryClock(platform.clock.now());
  clock.show(story.companySince);
  const tellers = await openCompany({ ...platform, clock }, clock);
  await new StoryTeller(tellers, dunmuirCottage).tell();
  const links = await new StoryTeller(tellers, brandmeerHouse).tell();
  const waiting = brandmeerHouse.orders.find(({ sent, approved }) => sent && !approved);
  const link = waiting && links.get(waiting);
  if (!link) throw new Error("The demo's story leaves no change order waiting for its client.");
  const signIns = [story.owner, story.estimator, story.crew].map((person) => ({ ...person }));
  const { pathname, hash } = new URL(link);
  return { signIns, clientPath: `${pathname}${hash}` };
}

/** The story is told at no device, and nobody in it mistypes a password. */
const nowhere: From = { device: {}, log: console };

async function openCompany(platform: Platform, clock: StoryClock): Promise<Tellers> {
  const { services } = createDeps(platform);
  const { name: companyName, details } = story.company;
  const callerOfNew = async ({ me: { member, company }, signedIn: { userId } }: Session): Promise<Caller> => {
    // The invented people have read their mail, and sign in on no device yet.
    await platform.accounts.confirmEmail(userId);
    await platform.accounts.revokeSessionsOf(userId);
    const { id, name, role } = member;
    return { companyId: company.id, role, memberId: id, actor: { kind: 'member', id, name } };
  };
  const owner = await callerOfNew(await services.companies.create({ companyName, ...story.owner }, nowhere));
  const { version } = await services.companies.company(owner.companyId);
  await services.companies.change(owner, version, details);
  const join = async ({ email, role, name, password }: story.DemoPerson) => {
    const { link } = await services.invitations.invite(owner, { email, role });
    const token = new URL(link).hash.slice(1);
    return callerOfNew(await services.joining.accept({ token, name, password }, nowhere));
  };
  const estimator = await join(story.estimator);
  const crew = await join(story.crew);
  return { services, clock, estimator, crew };
}
