import { projectRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import type { ContractService } from './contract.service.ts';

export function registerContractRoutes(app: FastifyInstance, service: ContractService): void {
  serve(app, projectRoutes.getContract, ({ params, principal }) => service.get(principal.companyId, params.projectId));
}
