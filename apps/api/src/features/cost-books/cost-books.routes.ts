import { priceRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import { callerOf } from '../../shared/caller.ts';
import type { CostBooksService } from './cost-books.service.ts';

export function registerCostBooksRoutes(app: FastifyInstance, service: CostBooksService): void {
  serve(app, priceRoutes.getCostBook, ({ principal }) => service.newest(principal.companyId));

  serve(app, priceRoutes.saveCostBook, ({ principal, body, ifMatch }) =>
    service.save(callerOf(principal), ifMatch, body.book),
  );

  serve(app, priceRoutes.listCostBooks, async ({ principal }) => ({ items: await service.list(principal.companyId) }));

  serve(app, priceRoutes.getCostBookVersion, ({ principal, params }) =>
    service.version(principal.companyId, params.bookVersion),
  );

  serve(app, priceRoutes.exportCostBook, async ({ principal, reply }) => {
    const { version, csv } = await service.exportCsv(principal.companyId);
    reply
      .type('text/csv; charset=utf-8')
      .header('content-disposition', `attachment; filename="cost-book-${version}.csv"`)
      .header('etag', `"${version}"`);
    return csv;
  });

  serve(app, priceRoutes.previewCostBookCsv, ({ principal, body }) => service.preview(principal.companyId, body.csv));
}
