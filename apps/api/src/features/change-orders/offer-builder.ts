import type { ChangeOrderDocument, ContentReview, ContractEffect, DocumentPart } from '@underlath/contract';
import {
  draftOffer,
  type KeptDraft,
  type LetterFinding,
  type LetterGroup,
  type NumberedBook,
  type OfferDraft,
  priceParts,
  type ScopedOffer,
  scopeOffer,
} from '@underlath/rules/offers';
import type { Tx } from '../../platform/database/database.ts';
import { namesOf } from '../../shared/members.ts';
import { refuseWork } from '../../shared/refused-work.ts';
import type { ContractService, History } from '../contract/contract.service.ts';
import type { CostBooksService } from '../cost-books/cost-books.service.ts';
import * as changeOrders from './change-orders.repository.ts';
import { judgeOf, toLetterFinding } from './letter-findings.ts';
import { carriedBy, contentReview } from './offer-content.ts';
import { assertCanPart } from './part-count.ts';

/** All that the change orders of a project are worked out from, read once. */
export interface OfferSources {
  readonly companyId: string;
  readonly history: History;
  readonly book: NumberedBook;
  /** Those asked for, and the declined ones of their places. */
  readonly findings: readonly LetterFinding[];
}

export interface OfferRequest {
  changeOrderId: string;
  number: number;
  version: number;
  findingIds: readonly string[];
  kept: KeptDraft;
  questions: NonNullable<ChangeOrderDocument['questions']>;
  /** Absent: the project's own address. Null: nothing is mailed. */
  mailTo?: string | null | undefined;
}

export interface Offer extends OfferDraft {
  /** Held against the list of the site's state. */
  readonly review: ContentReview;
  /** The address the client's link is mailed to, or null when it is handed over. */
  readonly mailTo: string | null;
  readonly group: LetterGroup;
  /** What it was made from. */
  readonly sources: OfferSources;
}

/** Reads what a client would be sent is made of, once, and has the rules put it together. */
export class OfferBuilder {
  constructor(
    private readonly contract: ContractService,
    private readonly books: CostBooksService,
  ) {}

  /** @throws ProblemError `not-found` when the project is gone */
  async sources(
    tx: Tx,
    companyId: string,
    projectId: string,
    findingIds: readonly string[],
    known?: History,
  ): Promise<OfferSources> {
    const history = known ?? (await this.contract.history(tx, companyId, projectId));
    const rows = await changeOrders.findFindings(tx, companyId, projectId, findingIds);
    const names = await namesOf(tx, companyId, rows.map(judgeOf));
    const findings = rows.map((row) => toLetterFinding(row, names.get(judgeOf(row)) ?? ''));
    return { companyId, history, book: await this.books.current(tx, companyId), findings };
  }

  /** @throws ProblemError `not-found` when the project is gone */
  history(tx: Tx, { companyId, projectId }: { companyId: string; projectId: string }): Promise<History> {
    return this.contract.history(tx, companyId, projectId);
  }

  /** The contract before and after so many cents and days more. */
  effect(history: History, change: { cents: number; days: number }): ContractEffect {
    return this.contract.effect(history, change);
  }

  /** The items, their price, and the words and days that follow from them. @throws ProblemError `invalid-input` */
  scope(sources: OfferSources, findingIds: readonly string[], kept: Pick<KeptDraft, 'typed' | 'spanish'>): ScopedOffer {
    return refuseWork(() => scopeOffer(groupOf(sources, findingIds), kept));
  }

  /** What the offer comes to for every choice of its findings short of all. @throws ProblemError `invalid-input` */
  parts({ draft, group, sources: { history } }: Offer): DocumentPart[] {
    assertCanPart(group.findings.length);
    const placesEs = Object.fromEntries(
      draft.items.flatMap(({ place }) => (place.nameEs === undefined ? [] : [[place.locationId, place.nameEs]])),
    );
    return refuseWork(() =>
      priceParts({ ...group, placesEs }, draft, (change) => this.contract.effect(history, change)),
    );
  }

  /** @throws ProblemError `invalid-input` */
  async build(tx: Tx, sources: OfferSources, request: OfferRequest): Promise<Offer> {
    const { companyId, history } = sources;
    const { changeOrderId, number, version, findingIds, kept, questions } = request;
    const { name, licenseNumber, phone, email, address } = await changeOrders.findCompany(tx, companyId);
    const { project } = history;
    const head = {
      ...{ changeOrderId, number, version, questions },
      company: { name, licenseNumber, phone, email, address },
      project: {
        id: project.id,
        name: project.name,
        siteAddress: project.siteAddress,
        clientName: project.clientName,
        timeZone: project.timeZone,
      },
    };
    const group = groupOf(sources, findingIds);
    const offer = refuseWork(() => draftOffer(group, kept, head, (change) => this.contract.effect(history, change)));
    const mailTo = request.mailTo === undefined ? project.clientEmail : request.mailTo;
    const carried = carriedBy(offer.draft, { findings: group.findings, mailTo });
    return { ...offer, review: contentReview(project.siteState, carried), mailTo, group, sources };
  }
}

/** The findings in the order asked for, beside the declined ones of their places. */
function groupOf({ findings, book, history: { terms } }: OfferSources, ids: readonly string[]): LetterGroup {
  const byId = new Map(findings.map((finding) => [finding.id, finding]));
  const chosen = ids.flatMap((id) => byId.get(id) ?? []);
  const places = new Set(chosen.map(({ place }) => place.id));
  return {
    findings: chosen,
    declined: findings.filter(
      ({ id, state, place }) => state === 'declined' && places.has(place.id) && !ids.includes(id),
    ),
    book,
    terms: { decreaseReturns: terms.netDecreaseReturnsOverheadAndProfit, dayKind: terms.dayKind },
  };
}
