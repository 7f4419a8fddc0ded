import { actualRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import { callerOf } from '../../shared/caller.ts';
import type { ActualsService } from './actuals.service.ts';

export function registerActualsRoutes(app: FastifyInstance, service: ActualsService): void {
  serve(app, actualRoutes.listActuals, ({ params, principal }) => service.list(principal.companyId, params.findingId));

  serve(app, actualRoutes.enterActual, ({ params, body, principal }) =>
    service.enter(callerOf(principal), params.findingId, body),
  );

  serve(app, actualRoutes.takeBackActual, ({ params, body, principal }) =>
    service.takeBack(callerOf(principal), params.actualId, body.why),
  );

  serve(app, actualRoutes.getWorkHistory, ({ principal }) => service.history(principal.companyId));
}
