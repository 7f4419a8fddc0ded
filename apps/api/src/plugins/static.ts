import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import fastifyStatic from '@fastify/static';
import { appAddresses } from '@underlath/contract';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';

const hour = 3600;
const year = 31_536_000;
const addresses = new Set<string>(appAddresses);

/** The dashboard's files. Addresses of the client page end in a secret, so they are answered without being looked up. */
export async function dashboardFiles(app: FastifyInstance, { folder }: { folder: string }): Promise<void> {
  if (!existsSync(folder)) return;
  await app.register(fastifyStatic, { root: folder, serve: false, cacheControl: false, preCompressed: true });
  const files = await listFiles(folder);
  const page = (name: string) => (_request: FastifyRequest, reply: FastifyReply) =>
    reply.header('cache-control', 'no-cache').sendFile(name);
  const options = { config: { permission: 'public' as const }, schema: { hide: true } };
  app.get('/c', options, page('client.html'));
  app.get('/c/*', options, page('client.html'));
  app.get('/', options, page('index.html'));
  app.get('/*', options, async (request, reply) => {
    const path = decodeURIComponent(request.url.split('?')[0] ?? '/').slice(1);
    if (files.has(path)) return reply.header('cache-control', ageOf(path)).sendFile(path);
    const [first = ''] = path.split('/');
    if (addresses.has(first)) return page('index.html')(request, reply);
    // A person who mistyped an address gets the app's own page for that; a program that looks for a file gets none.
    const isForPeople = first !== 'api' && !path.includes('.') && request.headers.accept?.includes('text/html');
    if (!isForPeople) return reply.callNotFound();
    return page('index.html')(request, reply.code(404));
  });
}

/** Files under assets/ carry the hash of their content in their name. Pages and the service worker are asked for anew each time: they say which of those are the current ones. */
function ageOf(path: string): string {
  if (path.startsWith('assets/')) return `public, max-age=${year}, immutable`;
  return path === 'service-worker.js' || path.endsWith('.html') ? 'no-cache' : `public, max-age=${hour}`;
}

/** Paths below the folder, with slashes on every system. */
async function listFiles(folder: string): Promise<Set<string>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile());
  return new Set(files.map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/')));
}
