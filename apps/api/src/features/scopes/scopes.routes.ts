import { scopeRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import type { ScopesService } from './scopes.service.ts';

export function registerScopesRoutes(app: FastifyInstance, service: ScopesService): void {
  serve(app, scopeRoutes.getPlaceScope, ({ params, query, principal, locale }) =>
    service.forPlace(principal.companyId, params.locationId, query, locale),
  );

  serve(app, scopeRoutes.evaluateScope, async ({ body, query, locale }) =>
    service.evaluate(body, query.locale ?? locale),
  );
}
