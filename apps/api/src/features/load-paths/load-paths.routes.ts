import { loadPathRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import { callerOf } from '../../shared/caller.ts';
import type { LoadPathsService } from './load-paths.service.ts';

export function registerLoadPathsRoutes(app: FastifyInstance, service: LoadPathsService): void {
  serve(app, loadPathRoutes.evaluateLoadPath, async ({ query, body, locale }) =>
    service.evaluate(body, query.locale ?? locale),
  );

  serve(app, loadPathRoutes.listLoadPaths, ({ params, principal, locale }) =>
    service.list(principal.companyId, params.locationId, locale),
  );

  serve(app, loadPathRoutes.createLoadPath, ({ params, body, principal, locale }) =>
    service.create(callerOf(principal), params.locationId, body, locale),
  );

  serve(app, loadPathRoutes.getLoadPath, ({ params, query, principal, locale }) =>
    service.get(principal.companyId, params.loadPathId, query.repaired ?? [], locale),
  );

  serve(app, loadPathRoutes.changeLoadPath, ({ params, body, principal, ifMatch, locale }) =>
    service.change(callerOf(principal), params.loadPathId, ifMatch, body, locale),
  );

  serve(app, loadPathRoutes.removeLoadPath, ({ params, principal, ifMatch }) =>
    service.remove(callerOf(principal), params.loadPathId, ifMatch),
  );

  serve(app, loadPathRoutes.listCapacities, ({ params, principal, locale }) =>
    service.capacities(principal.companyId, params.locationId, locale),
  );

  serve(app, loadPathRoutes.listLinesAbove, ({ params, principal }) =>
    service.linesAbove(principal.companyId, params.locationId),
  );
}
