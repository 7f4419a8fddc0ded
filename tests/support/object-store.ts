import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { buffer } from 'node:stream/consumers';

/** Enough of the S3 protocol for our adapter to be driven over a real socket. It checks no signature, so it says nothing about access. */
export async function startObjectStore(): Promise<{
  endpoint: string;
  objects: Map<string, Buffer>;
  close(): Promise<void>;
}> {
  const objects = new Map<string, Buffer>();
  const server = createServer((request, response) => void answer(request, response, objects));
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = server.address();
  const port = typeof address === 'object' && address ? address.port : 0;
  return {
    endpoint: `http://127.0.0.1:${port}`,
    objects,
    close: () => new Promise((done) => server.close(() => done())),
  };
}

async function answer(request: IncomingMessage, response: ServerResponse, objects: Map<string, Buffer>): Promise<void> {
  const url = new URL(request.url ?? '/', 'http://store');
  const [, bucket = '', ...rest] = decodeURIComponent(url.pathname).split('/');
  const key = `${bucket}/${rest.join('/')}`;
  const stored = objects.get(key);
  if (request.method === 'PUT') {
    objects.set(key, await buffer(request));
    response.writeHead(200, { etag: '"1"' }).end();
  } else if (request.method === 'DELETE') {
    objects.delete(key);
    response.writeHead(204).end();
  } else if (url.searchParams.has('list-type')) {
    const prefix = `${bucket}/${url.searchParams.get('prefix') ?? ''}`;
    const found = [...objects.keys()].filter((one) => one.startsWith(prefix)).sort();
    const contents = found.map(
      (one) =>
        `<Contents><Key>${one.slice(bucket.length + 1)}</Key><Size>1</Size><ETag>"1"</ETag><LastModified>2026-01-01T00:00:00Z</LastModified></Contents>`,
    );
    response.writeHead(200, { 'content-type': 'application/xml' });
    response.end(
      `<?xml version="1.0"?><ListBucketResult><IsTruncated>false</IsTruncated>${contents.join('')}</ListBucketResult>`,
    );
  } else if (!stored) {
    response.writeHead(404, { 'content-type': 'application/xml' });
    response.end(request.method === 'HEAD' ? undefined : '<Error><Code>NoSuchKey</Code></Error>');
  } else {
    response.writeHead(200, {
      'content-length': stored.length,
      etag: '"1"',
      'last-modified': 'Thu, 01 Jan 2026 00:00:00 GMT',
    });
    response.end(request.method === 'HEAD' ? undefined : stored);
  }
}
