import { noticeRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import { callerOf } from '../../shared/caller.ts';
import type { NoticesService } from './notices.service.ts';

export function registerNoticesRoutes(app: FastifyInstance, service: NoticesService): void {
  serve(app, noticeRoutes.getNotice, ({ params, principal }) => service.get(callerOf(principal), params.findingId));

  serve(app, noticeRoutes.sendNotice, ({ params, body, principal }) =>
    service.send(callerOf(principal), params.findingId, body),
  );
}
