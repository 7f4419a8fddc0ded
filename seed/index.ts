import { Readable } from 'node:stream';
import type { Finding } from '@underlath/contract';
import { findCheck } from '@underlath/rules/all-checks';
import type { DemoAccess } from '../apps/api/src/commands/demo-access.ts';
import type { Deps } from '../apps/api/src/deps.ts';
import { type Caller, callerOf } from '../apps/api/src/features/caller.ts';
import type { Session } from '../apps/api/src/features/members/members.service.ts';
import { newId } from '../apps/api/src/platform/ids.ts';
import type { Platform } from '../apps/api/src/platform/platform.ts';
import { StartupError } from '../apps/api/src/platform/startup-error.ts';
import { renderPhotos } from './pictures/render.ts';
import * as story from './story.ts';

type Services = Deps['services'];

interface Demo {
  readonly services: Services;
  readonly owner: Caller;
  readonly estimator: Caller;
  readonly crew: Caller;
  readonly projectId: string;
}

const dayMs = 86_400_000;

/**
 * Fills an empty database with an invented house, through the same services that people use: every judgment is a real one,
 * every photo went through the real intake, and the client answered over a real link.
 * @throws StartupError when the database holds anything
 */
export async function seedDemo(platform: Platform, { services }: Pick<Deps, 'services'>): Promise<DemoAccess> {
  const { rowCount } = await platform.database.ownerPool.query('select 1 from company limit 1');
  if (rowCount)
    throw new StartupError('The database is not empty, so the demo was not written; use an empty database.');
  const now = platform.clock.now();
  const demo = await openCompany(services, now);
  await addContract(demo, now);
  const placeIds = await addPlaces(demo);
  const findings = await addFindings(demo, placeIds, now);
  const photoIds = await addPhotos(demo, findings, now);
  await addLoadPaths(demo, placeIds, findings, photoIds);
  await tellClient(demo, findings, now);
  await price(demo, findings);
  const idsOf = (keys: readonly string[]) => keys.map((key) => need(findings, key).id);
  await approve(demo, idsOf(story.approvedOrder.findings));
  const link = await sendAndAsk(demo, idsOf(story.sentOrder.findings));
  await services.changeOrders.create(demo.estimator, demo.projectId, { findingIds: idsOf(story.draftOrder.findings) });
  const signIns = [story.owner, story.estimator, story.crew].map((person) => ({ ...person }));
  const { pathname, hash } = new URL(link);
  return { signIns, clientPath: `${pathname}${hash}` };
}

async function openCompany(services: Services, now: Date): Promise<Demo> {
  const { name: companyName, details } = story.company;
  const owner = toCaller(await services.members.createCompany({ companyName, ...story.owner }));
  const { version } = await services.members.company(owner.companyId);
  await services.members.changeCompany(owner.companyId, version, details);
  const join = async ({ email, role, name, password }: typeof story.estimator) => {
    const { link } = await services.invitations.invite(owner, { email, role });
    const token = new URL(link).hash.slice(1);
    return toCaller(await services.invitations.accept({ token, name, password }));
  };
  const estimator = await join(story.estimator);
  const crew = await join(story.crew);
  const startOn = dayFrom(now, -21);
  const { id: projectId } = await services.projects.create(estimator, {
    ...story.project,
    standardEditions: [...story.project.standardEditions],
    startOn,
  });
  return { services, owner, estimator, crew, projectId };
}

function toCaller({ me: { member, company } }: Session): Caller {
  const { id, name, role } = member;
  return callerOf({ kind: 'member', companyId: company.id, userId: id, memberId: id, name, role, actorId: id });
}

/** The demo's phone is set to a zone eight hours behind UTC; the story's days are days there, whatever the hour. */
const phoneOffset = '-08:00';
const phoneOffsetMs = -8 * 3_600_000;

/** A day at the house, so many days from the one it is there now. */
const dayFrom = (now: Date, days: number): string =>
  new Date(now.getTime() + phoneOffsetMs + days * dayMs).toISOString().slice(0, 10);

/** What the contract says, and what was done and paid before the story begins. */
async function addContract({ services, estimator, projectId }: Demo, now: Date): Promise<void> {
  const { payments, dayOffInDays, noticeMethods, ...terms } = story.terms;
  const ids = new Map<string, string>(payments.map(({ key }) => [key, newId()]));
  await services.contractTerms.save(estimator, projectId, 0, {
    ...terms,
    noticeMethods: [...noticeMethods],
    daysOff: [dayFrom(now, dayOffInDays)],
    milestones: payments.map(({ key, ...payment }) => ({ id: need(ids, key), ...payment })),
  });
  for (const { daysAgo, ...entry } of story.work) {
    const happenedOn = dayFrom(now, -daysAgo);
    if (entry.kind !== 'payment') await services.contractEntries.add(estimator, projectId, { ...entry, happenedOn });
    else {
      const { settles, ...payment } = entry;
      await services.contractEntries.add(estimator, projectId, {
        ...payment,
        happenedOn,
        milestoneId: need(ids, settles),
      });
    }
  }
}

async function addPlaces({ services, estimator, projectId }: Demo): Promise<Map<string, string>> {
  const ids = new Map<string, string>();
  for (const [position, { key, in: parent, ...place }] of story.places.entries()) {
    const { id } = await services.locations.create(estimator, projectId, {
      widthIn: null,
      heightIn: null,
      framingSpacingIn: null,
      memberDepthIn: null,
      storiesAbove: 0,
      openings: [],
      existing: [],
      edgeNailSpacingIn: null,
      fieldNailSpacingIn: null,
      ...place,
      parentId: parent === undefined ? null : need(ids, parent),
      position,
    });
    ids.set(key, id);
  }
  return ids;
}

async function addFindings({ services, crew, projectId }: Demo, placeIds: Map<string, string>, now: Date) {
  const made = new Map<string, Finding>();
  for (const { key, place, checkId, title, note, seen, extent, inputs, context = {} } of story.findings) {
    if (!findCheck(checkId)) throw new Error(`The demo's finding "${key}" names no check: ${checkId}`);
    const body = { locationId: need(placeIds, place), checkId, title, note, extent, inputs, context, photoIds: [] };
    const seenAt = new Date(takenAt(seen, now)).toISOString();
    made.set(key, await services.findings.create(crew, projectId, { ...body, seenAt }, 'en'));
  }
  return made;
}

const takenAt = ({ daysAgo, time }: { daysAgo: number; time: string }, now: Date): string =>
  `${dayFrom(now, -daysAgo)}T${time}${phoneOffset}`;

/** Drawn, given a camera's time, and taken in like any other upload; the smaller pictures are made at once. Answers the first photo of each finding. */
async function addPhotos(demo: Demo, findings: Map<string, Finding>, now: Date): Promise<Map<string, string>> {
  const wanted = story.findings.flatMap(({ key, seen, photos }) => photos.map((photo) => ({ ...photo, key, seen })));
  const drawn = await renderPhotos(wanted.map(({ draw, seen }) => ({ svg: draw(), takenAt: takenAt(seen, now) })));
  const { intake, derivatives } = demo.services;
  const derived: Promise<void>[] = [];
  const first = new Map<string, string>();
  for (const [at, { key, caption, stage }] of wanted.entries()) {
    const { id: findingId, locationId } = need(findings, key);
    const file = await intake.receive(Readable.from([drawn[at]]));
    const photo = await intake.add(demo.crew, demo.projectId, { findingId, locationId, stage, caption }, file);
    if (!first.has(key)) first.set(key, photo.id);
    derived.push(derivatives.derive(demo.crew.companyId, photo.id, true));
  }
  await Promise.all(derived);
  return first;
}

/** The walls and beams of the story as chains, tied to their findings. */
async function addLoadPaths(
  { services, estimator }: Demo,
  placeIds: Map<string, string>,
  findings: Map<string, Finding>,
  photoIds: Map<string, string>,
): Promise<void> {
  for (const { place, segment, links, ...path } of story.loadPaths) {
    const body = {
      storyShare: null,
      storiesAbove: null,
      shored: false,
      ...path,
      segments: [
        {
          ...segment,
          links: links.map(({ findings: keys = [], photoOf, ...link }) => ({
            at: null,
            parts: null,
            ...link,
            findingIds: keys.map((key) => need(findings, key).id),
            photoId: photoOf === undefined ? null : need(photoIds, photoOf),
          })),
        },
      ],
    };
    await services.loadPaths.create(estimator, need(placeIds, place), body, 'en');
  }
}

/** Notices that went out by another way than from here. */
async function tellClient({ services, estimator }: Demo, findings: Map<string, Finding>, now: Date): Promise<void> {
  for (const { findings: keys, daysAgo, method, text } of story.notices) {
    const notice = {
      how: 'noted',
      method,
      sentOn: dayFrom(now, -daysAgo),
      to: story.project.clientName,
      text,
    } as const;
    for (const key of keys) await services.notices.send(estimator, need(findings, key).id, notice);
  }
}

/** The suggested repair of each finding that the story prices, with what its estimator typed. */
async function price({ services, estimator }: Demo, findings: Map<string, Finding>): Promise<void> {
  for (const { key, priced = true, byHand } of story.findings) {
    if (!priced) continue;
    const { choices, manualLines, overrides, exclusions, alternates, findingVersion } = await services.estimates.get(
      estimator.companyId,
      need(findings, key).id,
    );
    const content = { choices, manualLines, overrides, exclusions, alternates, ...byHand };
    await services.estimates.save(estimator, need(findings, key).id, findingVersion, content);
  }
}

async function send({ services, estimator, projectId }: Demo, findingIds: string[]): Promise<string> {
  const { id, version } = await services.changeOrders.create(estimator, projectId, { findingIds });
  const { link } = await services.sending.send(estimator, id, version, {
    expiresInDays: 60,
    byPart: findingIds.length > 1,
  });
  return link;
}

const openAsClient = async ({ services }: Demo, link: string) =>
  (await services.links.open(new URL(link).hash.slice(1))).principal;

async function approve(demo: Demo, findingIds: string[]): Promise<void> {
  const client = await openAsClient(demo, await send(demo, findingIds));
  const { document, sha256, locale } = await demo.services.approvals.letter(client);
  const { signer } = story.approvedOrder;
  const consent = { consent: true, consentId: document.consent.id } as const;
  const answer = { kind: 'approved', sha256, signerName: signer, reason: '', locale, ...consent } as const;
  await demo.services.approvals.decide(client, answer, 'the invented client of the demo');
}

async function sendAndAsk(demo: Demo, findingIds: string[]): Promise<string> {
  const link = await send(demo, findingIds);
  const client = await openAsClient(demo, link);
  await demo.services.approvals.ask(client, { name: story.project.clientName, text: story.sentOrder.question });
  return link;
}

function need<Value>(map: ReadonlyMap<string, Value>, key: string): Value {
  const value = map.get(key);
  if (value === undefined) throw new Error(`The demo's story names "${key}", which it never tells of.`);
  return value;
}
