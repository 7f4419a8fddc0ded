import { checkRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import type { ChecksService } from './checks.service.ts';

export function registerChecksRoutes(app: FastifyInstance, service: ChecksService): void {
  serve(app, checkRoutes.listChecks, async ({ query, locale }) => service.list(query.locale ?? locale));

  serve(app, checkRoutes.getCheck, async ({ params, query, locale }) =>
    service.get(params.checkId, query.locale ?? locale),
  );

  serve(app, checkRoutes.evaluateCheck, async ({ params, query, body, locale }) =>
    service.evaluate(params.checkId, body, query.locale ?? locale),
  );
}
