import { locationRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import { callerOf } from '../../shared/caller.ts';
import type { LocationsService } from './locations.service.ts';

export function registerLocationsRoutes(app: FastifyInstance, service: LocationsService): void {
  serve(app, locationRoutes.listLocations, ({ params, principal }) =>
    service.list(principal.companyId, params.projectId),
  );

  serve(app, locationRoutes.createLocation, ({ params, body, principal }) =>
    service.create(callerOf(principal), params.projectId, body),
  );

  serve(app, locationRoutes.changeLocation, ({ params, body, principal, ifMatch }) =>
    service.change(callerOf(principal), params.locationId, ifMatch, body),
  );

  serve(app, locationRoutes.removeLocation, ({ params, principal, ifMatch }) =>
    service.remove(callerOf(principal), params.locationId, ifMatch),
  );
}
