import { recordRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import * as z from 'zod';
import { invalidInput } from '../../platform/problem-error.ts';
import { serve } from '../../plugins/serve.ts';
import { cutPage, readCursor } from '../../shared/paging.ts';
import type { RecordsService } from './records.service.ts';

/** Above every sequence number: the column is a 32-bit integer. */
const newest = 2 ** 31 - 1;
const position = z.object({ list: z.literal('record'), seq: z.int().min(1) });

export function registerRecordsRoutes(app: FastifyInstance, service: RecordsService): void {
  serve(app, recordRoutes.listRecord, async ({ params, query, principal }) => {
    const before = readCursor(position, query.cursor)?.seq ?? newest;
    const events = await service.list(principal.companyId, params.projectId, before, query.limit + 1);
    return cutPage(
      events,
      query.limit,
      (event) => event,
      ({ seq }) => ({ list: 'record', seq }),
    );
  });

  serve(app, recordRoutes.verifyRecord, ({ params, query, principal }) => {
    const { seq, hash } = query;
    if ((seq === undefined) !== (hash === undefined))
      throw invalidInput(
        '/query',
        'seq and hash belong together: the number of an entry and its hash, as a letter prints them.',
      );
    const handed = seq !== undefined && hash !== undefined ? [{ seq, hash }] : [];
    return service.verify(principal.companyId, params.projectId, handed);
  });
}
