import { type ChangeOrderDocument, changeOrderRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import { callerOf } from '../../shared/caller.ts';
import type { ChangeOrdersService } from './change-orders.service.ts';
import type { SendingService } from './sending.service.ts';

export function registerChangeOrdersRoutes(
  app: FastifyInstance,
  service: ChangeOrdersService,
  sending: SendingService,
): void {
  serve(app, changeOrderRoutes.listChangeOrders, async ({ params, principal }) => ({
    items: await service.list(principal.companyId, params.projectId),
  }));

  serve(app, changeOrderRoutes.createChangeOrder, ({ params, body, principal }) =>
    service.create(callerOf(principal), params.projectId, body),
  );

  serve(app, changeOrderRoutes.getChangeOrder, ({ params, principal }) =>
    service.get(principal.companyId, params.changeOrderId),
  );

  serve(app, changeOrderRoutes.changeChangeOrder, ({ params, body, principal, ifMatch }) =>
    service.change(callerOf(principal), params.changeOrderId, ifMatch, body),
  );

  serve(app, changeOrderRoutes.setAsideChangeOrder, ({ params, principal, ifMatch }) =>
    service.setAside(callerOf(principal), params.changeOrderId, ifMatch),
  );

  serve(app, changeOrderRoutes.sendChangeOrder, async ({ params, body, principal, ifMatch, reply }) => {
    const sent = await sending.send(callerOf(principal), params.changeOrderId, ifMatch, body);
    reply.header('etag', `"${sent.changeOrder.version}"`);
    return sent;
  });

  serve(app, changeOrderRoutes.renewClientLink, ({ params, body, principal }) =>
    sending.renewLink(callerOf(principal), params.changeOrderId, body),
  );

  serve(app, changeOrderRoutes.revokeClientLink, ({ params, principal }) =>
    sending.revokeLink(callerOf(principal), params.changeOrderId),
  );

  serve(app, changeOrderRoutes.getSentDocument, async ({ params, principal, reply }) => {
    const { document, sha256 } = await sending.sentDocument(
      principal.companyId,
      params.changeOrderId,
      params.sentVersion,
    );
    // The stored bytes themselves, so that whoever hashes the answer gets the ETag.
    reply
      .header('etag', `"${sha256}"`)
      .type('application/json')
      .serializer((bytes: unknown) => bytes as string);
    return document as unknown as ChangeOrderDocument;
  });

  serve(app, changeOrderRoutes.answerQuestion, ({ params, body, principal }) =>
    service.answer(callerOf(principal), params.changeOrderId, params.questionId, body.answer),
  );
}
