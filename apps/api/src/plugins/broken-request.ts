import type { Socket } from 'node:net';
import { type ProblemType, problems } from '@underlath/contract';
import { newId } from '../platform/ids.ts';

/** What the parser of HTTP itself refuses, before there is a request to answer. */
const refusals: Record<string, { type: ProblemType; status: number; detail: string }> = {
  HPE_HEADER_OVERFLOW: {
    type: 'malformed-request',
    status: 431,
    detail: 'The headers of the request are larger than is taken here.',
  },
  ERR_HTTP_REQUEST_TIMEOUT: {
    type: 'malformed-request',
    status: 408,
    detail: 'The request did not arrive in time.',
  },
};
const unreadable = { type: 'malformed-request', status: 400, detail: 'This is no readable request of HTTP.' } as const;

/** Answers such a connection with a problem document (RFC 9457), as all else is, and closes it. */
export function refuseConnection(error: NodeJS.ErrnoException, socket: Socket): void {
  if (error.code === 'ECONNRESET' || socket.destroyed || !socket.writable) {
    socket.destroy(error);
    return;
  }
  const { type, status, detail } = refusals[error.code ?? ''] ?? unreadable;
  const document = {
    type: `urn:underlath:problem:${type}`,
    title: problems[type].title,
    status,
    detail,
    instance: `urn:uuid:${newId()}`,
  };
  const body = JSON.stringify(document);
  socket.end(
    [
      `HTTP/1.1 ${status} ${reasons[status] ?? 'Bad Request'}`,
      'content-type: application/problem+json',
      `content-length: ${Buffer.byteLength(body)}`,
      'x-content-type-options: nosniff',
      'cache-control: no-store',
      'connection: close',
      '',
      body,
    ].join('\r\n'),
  );
}

const reasons: Record<number, string> = { 408: 'Request Timeout', 431: 'Request Header Fields Too Large' };
