// What the work costs with nothing of ours around it: a bare upload to disk, a bare list from the same database.
import { createHash, randomUUID } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import fastify from 'fastify';
import pg from 'pg';

const folder = process.env.DATA_DIR ?? '';
const pool = new pg.Pool({ connectionString: process.env.DATABASE_URL ?? '', max: 16 });

const uploads = createServer(async (request, response) => {
  const hash = createHash('sha256');
  const hashing = new Transform({
    transform(chunk, _encoding, done) {
      hash.update(chunk);
      done(null, chunk);
    },
  });
  await pipeline(request, hashing, createWriteStream(join(folder, randomUUID())));
  response.end(JSON.stringify({ sha256: hash.digest('hex') }));
});
uploads.listen(0, '127.0.0.1');

const lists = fastify();
lists.get<{ Params: { projectId: string } }>('/projects/:projectId/findings', async (request, reply) => {
  const { rows } = await pool.query(
    `select f.*, l.name as location_name, m.name as created_by_name,
       (select json_agg(json_build_object('id', p.id, 'stage', p.stage, 'caption', p.caption, 'derivative', p.derivative_state))
        from finding_photo fp join photo p on p.company_id = fp.company_id and p.id = fp.photo_id
        where fp.company_id = f.company_id and fp.finding_id = f.id) as photos
     from finding f
     join location l on l.company_id = f.company_id and l.id = f.location_id
     left join member m on m.company_id = f.company_id and m.id = f.created_by_id
     where f.project_id = $1 order by f.created_at desc, f.id limit 50`,
    [request.params.projectId],
  );
  return reply.type('application/json').send(JSON.stringify({ items: rows, next: null }));
});
await lists.listen({ port: 0, host: '127.0.0.1' });

process.send?.({
  uploads: `http://127.0.0.1:${(uploads.address() as AddressInfo).port}`,
  lists: `http://127.0.0.1:${(lists.server.address() as AddressInfo).port}`,
});
process.on('message', () => process.exit(0));
