import type { CookieSerializeOptions } from '@fastify/cookie';
import type { FastifyReply, FastifyRequest } from 'fastify';

/** Our cookies: who is signed in, a sign-in under way, and one for each letter that was opened on this device. */
export interface Cookies {
  /** For who reads how the API is called. */
  names: { session: string; client: string };
  readSession(request: FastifyRequest): string | undefined;
  setSession(reply: FastifyReply, token: string, expires: Date): void;
  clearSession(reply: FastifyReply): void;
  /** Of a sign-in that is begun and not finished; it opens nothing. */
  readTurn(request: FastifyRequest): string | undefined;
  setTurn(reply: FastifyReply, token: string, expires: Date): void;
  clearTurn(reply: FastifyReply): void;
  /** Of the letter that the address names: the browser sends no other along. */
  readClient(request: FastifyRequest): string | undefined;
  setClient(reply: FastifyReply, letterId: string, token: string, expires: Date): void;
  clearClient(reply: FastifyReply, letterId: string): void;
}

/**
 * Over https the names carry a prefix that plain http, which is for localhost, may not use: `__Host-` ties a cookie to
 * this host and its root, `__Secure-` leaves a letter's cookie the path of its letter.
 */
export function createCookies(publicUrl: string): Cookies {
  const secure = publicUrl.startsWith('https:');
  const session = `${secure ? '__Host-' : ''}underlath_session`;
  const turn = `${secure ? '__Host-' : ''}underlath_sign_in`;
  const client = `${secure ? '__Secure-' : ''}underlath_letter`;
  const options: CookieSerializeOptions = { path: '/', httpOnly: true, sameSite: 'lax', secure };
  const ofLetter = (letterId: string) => ({ ...options, path: `/api/v1/client/letters/${letterId}` });
  return {
    names: { session, client },
    readSession: (request) => request.cookies[session],
    setSession: (reply, token, expires) => void reply.setCookie(session, token, { ...options, expires }),
    clearSession: (reply) => void reply.clearCookie(session, options),
    readTurn: (request) => request.cookies[turn],
    setTurn: (reply, token, expires) => void reply.setCookie(turn, token, { ...options, sameSite: 'strict', expires }),
    clearTurn: (reply) => void reply.clearCookie(turn, { ...options, sameSite: 'strict' }),
    readClient: (request) => request.cookies[client],
    setClient: (reply, letterId, token, expires) =>
      void reply.setCookie(client, token, { ...ofLetter(letterId), expires }),
    clearClient: (reply, letterId) => void reply.clearCookie(client, ofLetter(letterId)),
  };
}
