import { Readable } from 'node:stream';
import { type PeopleEvent, peopleLogRoutes } from '@underlath/contract';
import type { FastifyInstance } from 'fastify';
import { serve } from '../../plugins/serve.ts';
import { csvOfRows, moreCsvRows } from '../../shared/csv.ts';
import { cutPage, newestFirst, readCursor } from '../../shared/paging.ts';
import type { PeopleLogService } from './people-log.service.ts';

export function registerPeopleLogRoutes(app: FastifyInstance, service: PeopleLogService): void {
  serve(app, peopleLogRoutes.listPeopleLog, async ({ query, principal }) => {
    const position = readCursor(newestFirst('people-log'), query.cursor);
    const events = await service.list(principal.companyId, { type: query.type, position, take: query.limit + 1 });
    return cutPage(
      events,
      query.limit,
      (event) => event,
      ({ at, id }) => ({ list: 'people-log', at, id }),
    );
  });

  serve(app, peopleLogRoutes.exportPeopleLog, async ({ query, principal, reply }) => {
    reply.type('text/csv; charset=utf-8').header('content-disposition', 'attachment; filename="people-log.csv"');
    return Readable.from(writeCsv(service.walk(principal.companyId, query.type)));
  });
}

const head = ['at (UTC)', 'what', 'by', 'by, kind', 'by, id', 'to, id', 'facts'];

async function* writeCsv(pages: AsyncIterable<PeopleEvent[]>): AsyncGenerator<string> {
  yield csvOfRows([head]);
  for await (const events of pages) if (events.length > 0) yield moreCsvRows(events.map(toCells));
}

const toCells = ({ at, type, actor, subjectId, data }: PeopleEvent): string[] => [
  at,
  type,
  actor.name,
  actor.kind,
  actor.id,
  subjectId ?? '',
  Object.entries(data)
    .map(([name, value]) => `${name}: ${Array.isArray(value) ? value.join(', ') : String(value)}`)
    .join('; '),
];
