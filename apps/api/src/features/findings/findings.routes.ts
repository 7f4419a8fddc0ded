import { findingRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import { callerOf } from '../../shared/caller.ts';
import type { FindingsService } from './findings.service.ts';

export function registerFindingsRoutes(app: FastifyInstance, service: FindingsService): void {
  serve(app, findingRoutes.listFindings, ({ params, query, principal, reply }) => {
    // The hot list: checking every row against its schema again costs half of the answer's time. The tests do that.
    reply.type('application/json; charset=utf-8').serializer((page: unknown) => JSON.stringify(page));
    return service.list(principal.companyId, params.projectId, query);
  });

  serve(app, findingRoutes.createFinding, ({ params, body, principal, locale }) =>
    service.create(callerOf(principal), params.projectId, body, locale),
  );

  serve(app, findingRoutes.getFinding, ({ params, principal, locale }) =>
    service.get(principal.companyId, params.findingId, locale),
  );

  serve(app, findingRoutes.changeFinding, ({ params, body, principal, ifMatch, locale }) =>
    service.change(callerOf(principal), params.findingId, ifMatch, body, locale),
  );

  serve(app, findingRoutes.judgeFinding, ({ params, body, principal, locale }) =>
    service.judge(callerOf(principal), params.findingId, body, locale),
  );

  serve(app, findingRoutes.attachPhotos, ({ params, body, principal, locale }) =>
    service.attachPhotos(callerOf(principal), params.findingId, body.photoIds, locale),
  );

  serve(app, findingRoutes.moveFinding, ({ params, body, principal, ifMatch, locale }) =>
    service.move(callerOf(principal), params.findingId, ifMatch, body, locale),
  );
}
