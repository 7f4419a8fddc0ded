import type {
  ChangeOrderDocument,
  ContentReview,
  DocumentAlternate,
  DocumentPart,
  DraftMark,
  MissingSpanish,
  PricedScope,
} from '@underlath/contract';
import type { Text } from '@underlath/rules';
import type { Tx } from '../../platform/database/database.ts';
import { notFound } from '../../platform/problem-error.ts';
import { namesOf } from '../../shared/members.ts';
import type { WorkTime } from '../estimates/estimates.service.ts';
import type { FindingRecord } from './change-orders.repository.ts';
import * as changeOrders from './change-orders.repository.ts';
import { composeWords, type KeptDraft, toMarks } from './draft-words.ts';
import { blocksOf, markBlocks } from './offer-blocks.ts';
import { carriedBy, contentReview } from './offer-content.ts';
import { suggestDays } from './offer-days.ts';
import { type DraftDocument, sharesOf, toDraft } from './offer-document.ts';
import { toItem } from './offer-items.ts';
import { assertCanPart, cautionsOfPart, choicesOf, daysOfPart, withoutSteps } from './offer-parts.ts';
import { wordsFromFindings } from './offer-wording.ts';
import { missingSpanishOf, nameInSpanish } from './spanish-names.ts';

/** Prices findings together, so that work they share in one place counts once. */
export interface ScopePricing {
  priceTogether(
    tx: Tx,
    companyId: string,
    findings: readonly FindingRecord[],
    declined: readonly FindingRecord[],
    /** Spanish names of places, by location id. */
    placesEs?: Readonly<Record<string, string>>,
  ): Promise<{
    scope: PricedScope;
    /** Titles of the chosen repairs, by finding id. */
    repairs: ReadonlyMap<string, readonly Text[]>;
    /** What each would cost if it were the only one. */
    alone: ReadonlyMap<string, PricedScope>;
    /** What the days are worked out from. */
    time: WorkTime;
    /** Declined findings that this work would close in. */
    covered: readonly string[];
    /** Other ways to do each, by finding id; in no sum. */
    alternates: ReadonlyMap<string, readonly (Omit<DocumentAlternate, 'what'> & { readonly what: readonly Text[] })[]>;
    /** What the price does not cover, by finding id. */
    exclusions: ReadonlyMap<string, readonly Text[]>;
  }>;
}

/** Where the contract stands before and after a change of this price and these days. */
export interface ContractStanding {
  withChange(
    tx: Tx,
    companyId: string,
    projectId: string,
    change: { cents: number; days: number },
  ): Promise<ChangeOrderDocument['contract']>;
}

export interface OfferRequest {
  companyId: string;
  changeOrderId: string;
  projectId: string;
  number: number;
  version: number;
  findingIds: readonly string[];
  kept: KeptDraft;
  questions: NonNullable<ChangeOrderDocument['questions']>;
  /** Absent: the project's own address. Null: nothing is mailed. */
  mailTo?: string | null | undefined;
}

type Place = Pick<OfferRequest, 'companyId' | 'projectId'>;

export interface Offer {
  draft: DraftDocument;
  blocks: string[];
  /** Typed fields to look at first. */
  marks: DraftMark[];
  missingSpanish: MissingSpanish[];
  /** What the office should know before it is sent; it can be sent all the same. */
  conflicts: string[];
  /** Held against the list of the site's state. */
  review: ContentReview;
  /** The address the client's link is mailed to, or null when it is handed over. */
  mailTo: string | null;
  findings: FindingRecord[];
}

/** Puts together what a client would be sent: items, price, contract, cautions. */
export class OfferBuilder {
  constructor(
    private readonly pricing: ScopePricing,
    private readonly contract: ContractStanding,
  ) {}

  /** The items, their price, and the words and days that follow from them. */
  async scope(
    tx: Tx,
    companyId: string,
    findingIds: readonly string[],
    { typed, spanish }: Pick<KeptDraft, 'typed' | 'spanish'>,
  ) {
    const findings = await changeOrders.findFindings(tx, companyId, findingIds);
    const places = [...new Set(findings.map(({ locationId }) => locationId))];
    const around = await changeOrders.findDeclined(tx, companyId, places);
    const declined = around.filter(({ id }) => !findingIds.includes(id));
    const together = await this.pricing.priceTogether(tx, companyId, findings, declined, spanish.places);
    const { scope, repairs, alone, covered, time, alternates, exclusions } = together;
    const judges = findings.map((finding) => finding.judgments[0]?.judgedById ?? finding.createdById);
    const names = await namesOf(tx, companyId, judges);
    const items = findings.map((finding, at) => ({
      ...nameInSpanish(
        toItem(finding, repairs.get(finding.id) ?? [], names.get(judges[at] ?? '') ?? ''),
        finding.checkId,
        spanish,
      ),
      ...besidePrice(alternates.get(finding.id) ?? [], exclusions.get(finding.id) ?? []),
      shareCents: 0,
    }));
    const conflicts = declined.filter(({ id }) => covered.includes(id)).map(coveredWords);
    const suggested = suggestDays(scope.hours, time);
    const fromFindings = wordsFromFindings(items, suggested, typed.includes('days'));
    return { findings, scope, items, alone, conflicts, fromFindings };
  }

  /** What the offer comes to for every choice of its findings short of all. @throws ProblemError `invalid-input` */
  async parts(tx: Tx, { companyId, projectId }: Place, { draft, findings }: Offer): Promise<DocumentPart[]> {
    assertCanPart(findings.length);
    const placesEs = Object.fromEntries(
      draft.items.flatMap(({ place }) => (place.nameEs === undefined ? [] : [[place.locationId, place.nameEs]])),
    );
    const whole = await this.pricing.priceTogether(tx, companyId, findings, [], placesEs);
    const suggested = suggestDays(whole.scope.hours, whole.time).days;
    const parts: DocumentPart[] = [];
    for (const chosen of choicesOf(findings)) {
      const left = draft.items.filter(({ findingId }) => !chosen.some(({ id }) => id === findingId));
      const { scope, time, alone, covered } = await this.pricing.priceTogether(
        tx,
        companyId,
        chosen,
        findings.filter((finding) => !chosen.includes(finding)),
        placesEs,
      );
      const findingIds = chosen.map(({ id }) => id);
      const shares = sharesOf(scope, findingIds, alone);
      const days = daysOfPart(draft.days, suggested, suggestDays(scope.hours, time).days);
      parts.push({
        findingIds,
        price: withoutSteps(scope),
        shares: findingIds.map((findingId, at) => ({ findingId, cents: shares[at] ?? 0 })),
        days,
        contract: await this.contract.withChange(tx, companyId, projectId, { cents: scope.totalCents, days }),
        cautions: cautionsOfPart(left, covered),
      });
    }
    return parts;
  }

  /** The contract before and after a change, as it stands now. @throws ProblemError `not-found` when the project is gone */
  effect(tx: Tx, { companyId, projectId }: Place, change: { cents: number; days: number }) {
    return this.contract.withChange(tx, companyId, projectId, change);
  }

  /** @throws ProblemError `not-found` when the project is gone */
  async build(tx: Tx, request: OfferRequest): Promise<Offer> {
    const { companyId, projectId, findingIds, kept, questions, changeOrderId, number, version } = request;
    const project = await changeOrders.findProject(tx, companyId, projectId);
    if (!project) throw notFound('project');
    const { id, name, licenseNumber, phone, email, address } = await changeOrders.findCompany(tx, companyId);
    const { findings, scope, items, alone, conflicts, fromFindings } = await this.scope(tx, id, findingIds, kept);
    const { wording, days } = composeWords(kept, fromFindings);
    const draft = toDraft({
      changeOrderId,
      number,
      version,
      company: { name, licenseNumber, phone, email, address },
      project: {
        id: projectId,
        name: project.name,
        siteAddress: project.siteAddress,
        clientName: project.clientName,
        timeZone: project.timeZone,
      },
      wording,
      items,
      price: scope,
      alone,
      days,
      contract: await this.contract.withChange(tx, companyId, projectId, { cents: scope.totalCents, days }),
      questions,
    });
    const mailTo = request.mailTo === undefined ? project.clientEmail : request.mailTo;
    const review = contentReview(project.siteState, carriedBy(draft, { findings, mailTo }));
    const checkIds = new Map(findings.map((finding) => [finding.id, finding.checkId]));
    const missingSpanish = missingSpanishOf(draft, checkIds);
    const marks = toMarks(kept.marks);
    const blocks = [...blocksOf(draft, findings), ...markBlocks(marks)];
    return { draft, findings, blocks, marks, missingSpanish, conflicts, review, mailTo };
  }
}

type OtherWays = Awaited<ReturnType<ScopePricing['priceTogether']>>['alternates'];

/** What the letter says of a finding beside its price; nothing stays out of the document that is signed. */
function besidePrice(alternates: NonNullable<ReturnType<OtherWays['get']>>, exclusions: readonly Text[]) {
  return {
    ...(exclusions.length > 0 && { exclusions: [...exclusions] }),
    ...(alternates.length > 0 && { alternates: alternates.map((one) => ({ ...one, what: [...one.what] })) }),
  };
}

const coveredWords = ({ number, title }: FindingRecord): string =>
  `Finding ${number} (${title}) was declined, and this work closes the wall over it. Tell the client before it is covered.`;
