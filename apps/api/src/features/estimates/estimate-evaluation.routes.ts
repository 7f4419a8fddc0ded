import { priceEvaluateRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { goneOf } from '../../plugins/gone.ts';
import { serve } from '../../plugins/serve.ts';
import type { EstimateEvaluationService } from './estimate-evaluation.service.ts';

export function registerEstimateEvaluationRoutes(app: FastifyInstance, service: EstimateEvaluationService): void {
  serve(app, priceEvaluateRoutes.evaluateEstimate, async ({ body, query, locale, reply }) =>
    service.evaluate(body, query.locale ?? locale, goneOf(reply)),
  );
}
