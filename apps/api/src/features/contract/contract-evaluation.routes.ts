import { priceEvaluateRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import type { ContractEvaluationService } from './contract-evaluation.service.ts';

export function registerContractEvaluationRoutes(app: FastifyInstance, service: ContractEvaluationService): void {
  serve(app, priceEvaluateRoutes.evaluateContract, async ({ body }) => service.evaluate(body));
}
