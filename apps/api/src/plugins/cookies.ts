import type { CookieSerializeOptions } from '@fastify/cookie';
import type { FastifyReply, FastifyRequest } from 'fastify';

/** Our two cookies: who is signed in, and which client link was opened on this device. */
export interface Cookies {
  readSession(request: FastifyRequest): string | undefined;
  setSession(reply: FastifyReply, token: string, expires: Date): void;
  clearSession(reply: FastifyReply): void;
  readClient(request: FastifyRequest): string | undefined;
  setClient(reply: FastifyReply, token: string, expires: Date): void;
  clearClient(reply: FastifyReply): void;
}

/** Over https the names carry `__Host-`, which ties a cookie to this host; plain http is for localhost, where that prefix is refused. */
export function createCookies(publicUrl: string): Cookies {
  const secure = publicUrl.startsWith('https:');
  const prefix = secure ? '__Host-' : '';
  const session = `${prefix}underlath_session`;
  const client = `${prefix}underlath_letter`;
  const options: CookieSerializeOptions = { path: '/', httpOnly: true, sameSite: 'lax', secure };
  return {
    readSession: (request) => request.cookies[session],
    setSession: (reply, token, expires) => void reply.setCookie(session, token, { ...options, expires }),
    clearSession: (reply) => void reply.clearCookie(session, options),
    readClient: (request) => request.cookies[client],
    setClient: (reply, token, expires) => void reply.setCookie(client, token, { ...options, expires }),
    clearClient: (reply) => void reply.clearCookie(client, options),
  };
}
