import { loadPathRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import type { LoadPathsService } from './load-paths.service.ts';

export function registerLoadPathsRoutes(app: FastifyInstance, service: LoadPathsService): void {
  serve(app, loadPathRoutes.evaluateLoadPath, async ({ query, body, locale }) =>
    service.evaluate(body, query.locale ?? locale),
  );
}
