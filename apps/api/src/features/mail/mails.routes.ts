import { mailRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import { callerOf } from '../../shared/caller.ts';
import type { MailsService } from './mails.service.ts';

export function registerMailsRoutes(app: FastifyInstance, mails: MailsService): void {
  serve(app, mailRoutes.sendMailAgain, ({ params, body, principal }) =>
    mails.sendAgain(callerOf(principal), params.changeOrderId, params.mailId, body.to),
  );
}
