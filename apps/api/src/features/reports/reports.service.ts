import { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import type { Locale } from '@underlath/contract';
import type { Database } from '../../platform/database/database.ts';
import { FileMissingError } from '../../platform/file-store/store-errors.ts';
import { notFound } from '../../platform/problem-error.ts';
import { letterZone } from '../../shared/site-words.ts';
import { toQuestion } from '../change-orders/change-orders.mapper.ts';
import { toDecision } from '../change-orders/decisions.mapper.ts';
import { toDocument } from '../change-orders/sent-document.mapper.ts';
import type { PhotoFile, PhotosService } from '../photos/photos.service.ts';
import { writeReport } from './change-order-report.ts';
import * as reports from './reports.repository.ts';

export interface Pdf {
  stream: Readable;
  fileName: string;
}

/** Documents to keep and print. */
export class ReportsService {
  constructor(
    private readonly database: Database,
    private readonly photos: Pick<PhotosService, 'views'>,
  ) {}

  /** Exactly one sent version, with the decision when there is one. The language is the client's when none is asked for. @throws ProblemError `not-found` */
  async sentPdf(companyId: string, changeOrderId: string, version: number, asked: Locale | undefined): Promise<Pdf> {
    const { sent, document, views } = await this.database.inCompany(companyId, async (tx) => {
      const sent = await reports.findSent(tx, companyId, changeOrderId, version);
      if (!sent) throw notFound('sent version');
      const document = toDocument(sent);
      const shown = document.items.flatMap(({ photos }) => photos.map(({ id }) => id));
      return { sent, document, views: await this.photos.views(tx, companyId, shown) };
    });
    const locale = asked ?? (sent.changeOrder.project.clientLocale === 'es' ? 'es' : 'en');
    const bytes = writeReport({
      document,
      sha256: sent.sha256,
      decision: sent.decision && toDecision(sent.decision),
      questions: sent.changeOrder.questions.map(toQuestion),
      answerBy: sent.links[0]?.expiresAt.toISOString() ?? document.expiresAt,
      locale,
      timeZone: letterZone(document, sent.changeOrder.project),
      loadPhoto: ({ id }) => load(views.get(id)),
    });
    return {
      stream: Readable.from(bytes, { objectMode: false }),
      fileName: `change-order-${document.number}-v${version}.pdf`,
    };
  }
}

/** A picture missing from the store leaves its place in the report, with words, instead of ending it. */
async function load(picture: PhotoFile | undefined): Promise<Buffer | null> {
  try {
    return picture ? await buffer((await picture.open()).stream) : null;
  } catch (error) {
    if (error instanceof FileMissingError) return null;
    throw error;
  }
}
