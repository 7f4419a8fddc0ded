import { Readable } from 'node:stream';
import type { Finding } from '@underlath/contract';
import { findCheck } from '@underlath/rules/all-checks';
import type { Deps } from '../apps/api/src/deps.ts';
import { newId } from '../apps/api/src/platform/ids.ts';
import type { Caller } from '../apps/api/src/shared/caller.ts';
import { takePhoto } from './pictures/photos.ts';
import type {
  DemoEntry,
  DemoFinding,
  DemoLoadPath,
  DemoNotice,
  DemoOrder,
  DemoPhoto,
  DemoRepair,
  Story,
  When,
} from './story.ts';
import type { StoryClock } from './story-clock.ts';

export interface Tellers {
  readonly services: Deps['services'];
  readonly clock: StoryClock;
  readonly estimator: Caller;
  readonly crew: Caller;
}

/** What happens at one moment of a story. */
interface Happening {
  readonly when: When;
  readonly happens: () => Promise<void>;
}

/** Tells one house's story through the services that people use, each part at its own moment, earliest first. */
export class StoryTeller {
  private projectId = '';
  private readonly milestoneIds: ReadonlyMap<string, string>;
  private readonly placeIds = new Map<string, string>();
  private readonly findingIds = new Map<string, string>();
  /** The first photo of each finding. */
  private readonly photoIds = new Map<string, string>();
  private readonly links = new Map<DemoOrder, string>();
  private readonly derived: Promise<void>[] = [];

  constructor(
    private readonly tellers: Tellers,
    private readonly story: Story,
  ) {
    this.milestoneIds = new Map(story.terms.payments.map(({ key }) => [key, newId()]));
  }

  /** @returns the link of each change order that was sent */
  async tell(): Promise<ReadonlyMap<DemoOrder, string>> {
    const { startDaysAgo } = this.story;
    this.tellers.clock.show({ daysAgo: startDaysAgo, time: '07:30:00' });
    await this.sign();
    const happenings = this.happenings().sort((a, b) => (this.momentOf(a) < this.momentOf(b) ? -1 : 1));
    for (const { when, happens } of happenings) {
      this.tellers.clock.show(when);
      await happens();
    }
    await Promise.all(this.derived);
    return this.links;
  }

  private readonly momentOf = ({ when }: Happening): string => this.tellers.clock.stampOf(when);

  private happenings(): Happening[] {
    const { entries, findings, loadPaths, notices, orders } = this.story;
    return [
      ...entries.map((entry) => ({
        when: { daysAgo: entry.daysAgo, time: '17:55:00' },
        happens: () => this.enter(entry),
      })),
      ...findings.map((finding) => ({ when: finding.seen, happens: () => this.find(finding) })),
      ...findings.flatMap((finding) => (finding.repaired ? this.repair(finding, finding.repaired) : [])),
      ...loadPaths.map((path) => ({ when: path.drawn, happens: () => this.draw(path) })),
      ...notices.map((notice) => ({ when: notice.on, happens: () => this.notify(notice) })),
      ...orders.flatMap((order) => this.agree(order)),
    ];
  }

  /** The contract, its terms, and the places of the house. */
  private async sign(): Promise<void> {
    const { services, clock, estimator } = this.tellers;
    const { project, startDaysAgo, terms, places } = this.story;
    const { id } = await services.projects.create(estimator, {
      ...project,
      siteState: 'NY',
      timeZone: null,
      clientLocale: 'en',
      codeEdition: 'irc-2021',
      standardEditions: ['sdpws-2021'],
      jurisdiction: 'Corran Landing (invented)',
      startOn: clock.dayOf(startDaysAgo),
    });
    this.projectId = id;
    await services.contractTerms.save(estimator, id, 0, {
      retainagePct: terms.retainagePct,
      netDecreaseReturnsOverheadAndProfit: false,
      dayKind: 'working',
      noticeDays: terms.noticeDays,
      noticeDayKind: 'calendar',
      noticeMethods: ['letter', 'e-mail'],
      daysOff: [clock.dayOf(terms.dayOffDaysAgo)],
      milestones: terms.payments.map(({ key, ...payment }) => ({ id: need(this.milestoneIds, key), ...payment })),
    });
    for (const [position, { key, in: parent, ...place }] of places.entries()) {
      const { id: placeId } = await services.locations.create(estimator, id, {
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
        parentId: parent === undefined ? null : need(this.placeIds, parent),
        position,
      });
      this.placeIds.set(key, placeId);
    }
  }

  /** Money and work beside the change orders. */
  private async enter({ daysAgo, ...entry }: DemoEntry): Promise<void> {
    const { services, clock, estimator } = this.tellers;
    const head = { name: entry.name, happenedOn: clock.dayOf(daysAgo) };
    const add = (what: Parameters<typeof services.contractEntries.add>[2]) =>
      services.contractEntries.add(estimator, this.projectId, what);
    if (entry.kind === 'payment') {
      const { settles, ...payment } = entry;
      await add({ ...payment, ...head, milestoneId: need(this.milestoneIds, settles) });
    } else if (entry.kind === 'rest') {
      const { currentSumCents, money } = await services.contractPage.get(estimator.companyId, this.projectId);
      await add({ kind: 'completed', ...head, cents: currentSumCents - money.completedCents });
      await add({ kind: 'payment', ...head, cents: currentSumCents - money.paidCents, milestoneId: null });
    } else await add({ ...entry, ...head });
  }

  private async find({ key, place, checkId, title, note, seen, extent, inputs, context = {}, photos }: DemoFinding) {
    if (!findCheck(checkId)) throw new Error(`The demo's finding "${key}" names no check: ${checkId}`);
    const { services, clock, crew } = this.tellers;
    const body = {
      locationId: need(this.placeIds, place),
      checkId,
      title,
      note,
      extent,
      inputs,
      context,
      photoIds: [],
    };
    const seenAt = new Date(clock.stampOf(seen)).toISOString();
    const finding = await services.findings.create(crew, this.projectId, { ...body, seenAt }, 'en');
    this.findingIds.set(key, finding.id);
    await this.photograph(finding, photos, seen, key);
  }

  /** Taken in like any other upload; the smaller pictures are made meanwhile. */
  private async photograph(
    { id: findingId, locationId }: Finding,
    photos: readonly DemoPhoto[],
    when: When,
    key: string,
  ) {
    const { services, clock, crew } = this.tellers;
    for (const { picture, caption, stage } of photos) {
      const file = await services.intake.receive(Readable.from([await takePhoto(picture, clock.stampOf(when))]));
      const { id } = await services.intake.add(crew, this.projectId, { findingId, locationId, stage, caption }, file);
      if (!this.photoIds.has(key)) this.photoIds.set(key, id);
      this.derived.push(services.derivatives.derive(crew.companyId, id, true));
    }
  }

  private repair({ key }: DemoFinding, { on, photos, took, measuredAgain }: DemoRepair): Happening[] {
    const { services, clock, estimator, crew } = this.tellers;
    const read = () => services.findings.get(crew.companyId, need(this.findingIds, key), 'en');
    const move = async (state: 'repaired' | 'proven') => {
      const { id, version } = await read();
      await services.findings.move(estimator, id, version, { state, reason: '' }, 'en');
    };
    const mend = async () => {
      const finding = await read();
      await this.photograph(finding, photos, on, key);
      const doneOn = clock.dayOf(on.daysAgo);
      for (const actual of took) await services.actuals.enter(estimator, finding.id, { ...actual, doneOn });
      await move('repaired');
    };
    const prove = async (inputs: Record<string, unknown>) => {
      await services.findings.judge(crew, need(this.findingIds, key), { inputs, context: {} }, 'en');
      await move('proven');
    };
    return [
      { when: on, happens: mend },
      ...(measuredAgain ? [{ when: measuredAgain.on, happens: () => prove(measuredAgain.inputs) }] : []),
    ];
  }

  /** A line of the house as a chain, tied to its findings. */
  private async draw({ place, drawn: _drawn, segments, ...path }: DemoLoadPath): Promise<void> {
    const body = {
      storyShare: null,
      storiesAbove: null,
      shored: false,
      lineAbove: null,
      ...path,
      segments: segments.map(({ links, ...segment }) => ({
        ...segment,
        links: links.map(({ findings = [], photoOf, ...link }) => ({
          at: null,
          parts: null,
          ...link,
          findingIds: findings.map((key) => need(this.findingIds, key)),
          photoId: photoOf === undefined ? null : need(this.photoIds, photoOf),
        })),
      })),
    };
    const { services, estimator } = this.tellers;
    await services.loadPaths.create(estimator, need(this.placeIds, place), body, 'en');
  }

  private async notify({ findings, on, method, text }: DemoNotice): Promise<void> {
    const { services, clock, estimator } = this.tellers;
    const { clientName: to } = this.story.project;
    const notice = { how: 'noted', method, sentOn: clock.dayOf(on.daysAgo), to, text } as const;
    for (const key of findings) await services.notices.send(estimator, need(this.findingIds, key), notice);
  }

  private agree(order: DemoOrder): Happening[] {
    const { made, sent, question, reply, approved } = order;
    let orderId = '';
    const make = async () => {
      orderId = await this.offer(order);
    };
    return [
      { when: made, happens: make },
      ...(sent ? [{ when: sent, happens: () => this.send(order, orderId) }] : []),
      ...(question ? [{ when: question.on, happens: () => this.ask(order, question.text) }] : []),
      ...(reply ? [{ when: reply.on, happens: () => this.reply(orderId, reply.text) }] : []),
      ...(approved ? [{ when: approved.on, happens: () => this.approve(order, approved) }] : []),
    ];
  }

  /** Prices the suggested repair of each finding, with what the estimator typed, and puts them into one change order in their words. */
  private async offer({ findings, headline }: DemoOrder): Promise<string> {
    const { services, estimator } = this.tellers;
    for (const key of findings) {
      const { byHand } = this.story.findings.find((one) => one.key === key) ?? {};
      const id = need(this.findingIds, key);
      const { choices, manualLines, overrides, exclusions, alternates, findingVersion } = await services.estimates.get(
        estimator.companyId,
        id,
      );
      const content = { choices, manualLines, overrides, exclusions, alternates, ...byHand };
      await services.estimates.save(estimator, id, findingVersion, content);
    }
    const findingIds = findings.map((key) => need(this.findingIds, key));
    const { id, version } = await services.changeOrders.create(estimator, this.projectId, { findingIds });
    await services.changeOrders.change(estimator, id, version, { wording: { headline } });
    return id;
  }

  private async send(order: DemoOrder, orderId: string): Promise<void> {
    const { services, estimator } = this.tellers;
    const { version } = await services.changeOrders.get(estimator.companyId, orderId);
    const how = { expiresInDays: 60, byPart: order.findings.length > 1, withEnglish: false };
    this.links.set(order, (await services.sending.send(estimator, orderId, version, how)).link);
  }

  /** As the client, over the real link. */
  private async open(order: DemoOrder) {
    const { hash } = new URL(need(this.links, order));
    return (await this.tellers.services.links.open(hash.slice(1))).principal;
  }

  private async ask(order: DemoOrder, text: string): Promise<void> {
    const { clientName: name } = this.story.project;
    const client = await this.open(order);
    await this.tellers.services.approvals.ask(client, { version: client.version, name, text });
  }

  private async reply(orderId: string, text: string): Promise<void> {
    const { services, estimator } = this.tellers;
    const { questions } = await services.changeOrders.get(estimator.companyId, orderId);
    for (const { id } of questions) await services.changeOrders.answer(estimator, orderId, id, text);
  }

  private async approve(order: DemoOrder, { only, reason = '' }: NonNullable<DemoOrder['approved']>): Promise<void> {
    const { approvals } = this.tellers.services;
    const client = await this.open(order);
    const { document, sha256, locale, contract } = await approvals.letter(client);
    const { clientName: signerName } = this.story.project;
    const consent = { consent: true, consentId: document.consent.id, acknowledged: false } as const;
    const part = only && { findingIds: only.map((key) => need(this.findingIds, key)) };
    const { version } = document;
    const { ledger } = contract;
    const said = {
      kind: 'approved',
      version,
      sha256,
      ledger,
      signerName,
      nameConfirmed: false,
      reason,
      locale,
    } as const;
    const answer = { ...said, ...consent, ...part };
    await approvals.decide(client, answer, 'the invented client of the demo');
  }
}

function need<Key, Value>(map: ReadonlyMap<Key, Value>, key: Key): Value {
  const value = map.get(key);
  if (value === undefined) throw new Error(`The demo's story names "${String(key)}", which it never tells of.`);
  return value;
}
