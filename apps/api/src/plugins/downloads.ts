import type { Readable } from 'node:stream';
import type { FastifyReply } from 'fastify';

/** Names the download; the stream is the answer. */
export function sendPdf(reply: FastifyReply, { stream, fileName }: { stream: Readable; fileName: string }): Readable {
  reply.type('application/pdf').header('content-disposition', `attachment; filename="${fileName}"`);
  return stream;
}
