import { contractRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import { callerOf } from '../../shared/caller.ts';
import type { ContractEntriesService } from './contract-entries.service.ts';
import type { ContractPageService } from './contract-page.service.ts';
import type { ContractTermsService } from './contract-terms.service.ts';

interface Services {
  contractPage: ContractPageService;
  contractTerms: ContractTermsService;
  contractEntries: ContractEntriesService;
}

export function registerContractRoutes(
  app: FastifyInstance,
  { contractPage: page, contractTerms: terms, contractEntries: entries }: Services,
): void {
  serve(app, contractRoutes.getContract, ({ params, principal }) => page.get(principal.companyId, params.projectId));

  serve(app, contractRoutes.getContractTerms, ({ params, principal }) =>
    terms.get(principal.companyId, params.projectId),
  );

  serve(app, contractRoutes.saveContractTerms, ({ params, body, principal, ifMatch }) =>
    terms.save(callerOf(principal), params.projectId, ifMatch, body),
  );

  serve(app, contractRoutes.listContractEntries, async ({ params, principal }) => ({
    items: await entries.list(principal.companyId, params.projectId),
  }));

  serve(app, contractRoutes.addContractEntry, ({ params, body, principal }) =>
    entries.add(callerOf(principal), params.projectId, body),
  );

  serve(app, contractRoutes.takeBackContractEntry, ({ params, body, principal }) =>
    entries.takeBack(callerOf(principal), params.contractEntryId, body.why),
  );

  serve(app, contractRoutes.getContractLedger, async ({ params, principal }) => ({
    items: await page.ledger(principal.companyId, params.projectId),
  }));

  serve(app, contractRoutes.exportContractLedger, async ({ params, principal, reply }) => {
    const csv = await page.ledgerCsv(principal.companyId, params.projectId);
    reply.type('text/csv; charset=utf-8').header('content-disposition', 'attachment; filename="contract-ledger.csv"');
    return csv;
  });
}
