import { changeOrderRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { sendPdf } from '../../plugins/downloads.ts';
import { serve } from '../../plugins/serve.ts';
import type { ReportsService } from './reports.service.ts';

export function registerReportsRoutes(app: FastifyInstance, service: ReportsService): void {
  serve(app, changeOrderRoutes.getSentPdf, async ({ params, query, principal, reply }) =>
    sendPdf(reply, await service.sentPdf(principal.companyId, params.changeOrderId, params.sentVersion, query.locale)),
  );
}
