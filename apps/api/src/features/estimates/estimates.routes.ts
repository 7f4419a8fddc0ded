import { priceRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { goneOf } from '../../plugins/gone.ts';
import { serve } from '../../plugins/serve.ts';
import { callerOf } from '../../shared/caller.ts';
import type { EstimateRangesService } from './estimate-ranges.service.ts';
import type { EstimatesService } from './estimates.service.ts';

export function registerEstimatesRoutes(
  app: FastifyInstance,
  service: EstimatesService,
  ranges: EstimateRangesService,
): void {
  serve(app, priceRoutes.getEstimate, async ({ params, principal, reply }) => {
    const estimate = await service.get(principal.companyId, params.findingId);
    // An estimate has no version of its own; it is saved against the finding's.
    reply.header('etag', `"${estimate.findingVersion}"`);
    return estimate;
  });

  serve(app, priceRoutes.saveEstimate, async ({ params, body, principal, ifMatch, reply }) => {
    const estimate = await service.save(callerOf(principal), params.findingId, ifMatch, body);
    reply.header('etag', `"${estimate.findingVersion}"`);
    return estimate;
  });

  serve(app, priceRoutes.previewEstimate, ({ params, query, body, principal, reply }) =>
    ranges.preview(principal.companyId, params.findingId, body, { ...query, gone: goneOf(reply) }),
  );

  serve(app, priceRoutes.getEstimateRange, ({ params, query, principal, reply }) =>
    ranges.ofFinding(principal.companyId, params.findingId, { ...query, gone: goneOf(reply) }),
  );

  serve(app, priceRoutes.getChangeOrderRange, ({ params, query, principal, reply }) =>
    ranges.ofChangeOrder(principal.companyId, params.changeOrderId, { ...query, gone: goneOf(reply) }),
  );
}
