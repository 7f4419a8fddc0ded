import type { CookieSerializeOptions } from '@fastify/cookie';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Sealing } from '../platform/accounts/sealing.ts';
import { newId } from '../platform/ids.ts';

/** Our cookies: who is signed in, a sign-in under way, who signed in here before, and one for each letter that was opened on this device. */
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
  /** The device that this person signed in on before, by a random name; undefined on any other. */
  readDevice(request: FastifyRequest, email: string): string | undefined;
  /** Stays after signing out: it opens nothing, and only tells the device from a stranger's. */
  setDevice(reply: FastifyReply, email: string): void;
  /** Of the letter that the address names: the browser sends no other along. */
  readClient(request: FastifyRequest): string | undefined;
  setClient(reply: FastifyReply, letterId: string, token: string, expires: Date): void;
  clearClient(reply: FastifyReply, letterId: string): void;
}

/** Browsers forget it sooner if they like. Common practice, no source. */
const deviceMs = 365 * 86_400_000;
const deviceOf = (email: string): string => `device of ${email.toLowerCase()}`;

/**
 * Over https the names carry a prefix that plain http, which is for localhost, may not use: `__Host-` ties a cookie to
 * this host and its root, `__Secure-` leaves a letter's cookie the path of its letter.
 */
export function createCookies(publicUrl: string, sealing: Sealing): Cookies {
  const secure = publicUrl.startsWith('https:');
  const session = `${secure ? '__Host-' : ''}underlath_session`;
  const turn = `${secure ? '__Host-' : ''}underlath_sign_in`;
  const device = `${secure ? '__Host-' : ''}underlath_device`;
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
    readDevice: (request, email) => {
      try {
        return sealing.unseal(deviceOf(email), request.cookies[device] ?? '');
      } catch {
        // Another person's, another server's, or made up: this person has not signed in here.
        return undefined;
      }
    },
    setDevice: (reply, email) => {
      const expires = new Date(Date.now() + deviceMs);
      reply.setCookie(device, sealing.seal(deviceOf(email), newId()), { ...options, sameSite: 'strict', expires });
    },
    readClient: (request) => request.cookies[client],
    setClient: (reply, letterId, token, expires) =>
      void reply.setCookie(client, token, { ...ofLetter(letterId), expires }),
    clearClient: (reply, letterId) => void reply.clearCookie(client, ofLetter(letterId)),
  };
}
