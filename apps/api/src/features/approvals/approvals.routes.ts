import { clientRoutes } from '@underlath/contract';
import type { FastifyInstance, FastifyReply } from 'fastify';
import type { Cookies } from '../../plugins/cookies.ts';
import { sendPdf } from '../../plugins/downloads.ts';
import { serve } from '../../plugins/serve.ts';
import type { PhotosService } from '../photos/photos.service.ts';
import type { ReportsService } from '../reports/reports.service.ts';
import type { ApprovalsService } from './approvals.service.ts';
import type { ClientLinks } from './client-links.ts';

interface Parts {
  approvals: ApprovalsService;
  links: ClientLinks;
  reports: ReportsService;
  photos: PhotosService;
  cookies: Cookies;
}

export function registerApprovalsRoutes(
  app: FastifyInstance,
  { approvals, links, reports, photos, cookies }: Parts,
): void {
  const open = async (reply: FastifyReply, secret: string, named?: string) => {
    const { principal, token, expiresAt } = await links.open(secret, named);
    const { letterId } = principal;
    cookies.setClient(reply, letterId, token, expiresAt);
    return { letterId };
  };

  serve(app, clientRoutes.openClientLink, ({ params, body, reply }) => open(reply, body.token, params.letterId));

  serve(app, clientRoutes.openUnnamedLink, ({ body, reply }) => open(reply, body.token));

  serve(app, clientRoutes.closeClientLink, async ({ params: { letterId }, request, reply }) => {
    const token = cookies.readClient(request);
    if (token) await links.close(token, letterId);
    cookies.clearClient(reply, letterId);
  });

  serve(app, clientRoutes.getClientLetter, ({ principal }) => approvals.letter(principal));

  serve(app, clientRoutes.decide, ({ principal, body, request }) =>
    approvals.decide(principal, body, (request.headers['user-agent'] ?? '').slice(0, 300)),
  );

  serve(app, clientRoutes.ask, ({ principal, body }) => approvals.ask(principal, body));

  serve(app, clientRoutes.clientPdf, async ({ principal, query, locale, reply }) =>
    sendPdf(
      reply,
      await reports.sentPdf(principal.companyId, principal.changeOrderId, principal.version, query.locale ?? locale),
    ),
  );

  serve(app, clientRoutes.clientPhoto, async ({ principal, params, query, reply }) => {
    await approvals.assertPhoto(principal, params.photoId);
    const picture = await photos.picture(principal.companyId, params.photoId, query.size);
    const { stream, byteCount } = await picture.open();
    reply.type(picture.mediaType).header('content-length', byteCount);
    return stream;
  });
}
