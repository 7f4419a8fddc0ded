import { changeOrderRoutes } from '@underlath/contract';
import type { FastifyInstance, FastifyReply } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import type { Pdf, ReportsService } from './reports.service.ts';

export function registerReportsRoutes(app: FastifyInstance, service: ReportsService): void {
  serve(app, changeOrderRoutes.getSentPdf, async ({ params, query, principal, reply }) =>
    sendPdf(reply, await service.sentPdf(principal.companyId, params.changeOrderId, params.sentVersion, query.locale)),
  );
}

/** Names the download; the stream is the answer. */
export function sendPdf(reply: FastifyReply, { stream, fileName }: Pdf): Pdf['stream'] {
  reply.type('application/pdf').header('content-disposition', `attachment; filename="${fileName}"`);
  return stream;
}
