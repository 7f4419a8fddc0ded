import helmet from '@fastify/helmet';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { ProblemError } from '../platform/problem-error.ts';

interface Options {
  publicUrl: string;
}

const yearSeconds = 31_536_000;

/** The crew's phone takes pictures; nothing here asks for more of a device. What passkeys and copying take is left as browsers have it. */
const denied = [
  'accelerometer',
  'autoplay',
  'browsing-topics',
  'display-capture',
  'encrypted-media',
  'geolocation',
  'gyroscope',
  'hid',
  'idle-detection',
  'local-fonts',
  'magnetometer',
  'microphone',
  'midi',
  'payment',
  'serial',
  'usb',
  'xr-spatial-tracking',
];
const permissionsPolicy = ['camera=(self)', ...denied.map((name) => `${name}=()`)].join(', ');

/** Headers that keep a page to itself, and a refusal of writes that another site makes a browser send. */
export const security = fp(async (app: FastifyInstance, { publicUrl }: Options) => {
  const isHttps = publicUrl.startsWith('https:');
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'blob:', 'data:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        manifestSrc: ["'self'"],
        workerSrc: ["'self'"],
        formAction: ["'self'"],
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
        ...(isHttps && { upgradeInsecureRequests: [] }),
      },
    },
    strictTransportSecurity: isHttps && { maxAge: 2 * yearSeconds, includeSubDomains: true },
    referrerPolicy: { policy: 'no-referrer' },
    frameguard: { action: 'deny' },
    crossOriginResourcePolicy: { policy: 'same-origin' },
    crossOriginOpenerPolicy: { policy: 'same-origin' },
    xPoweredBy: true,
  });
  const ownOrigin = new URL(publicUrl).origin;
  app.addHook('onRequest', async (request) => assertSameSite(request, ownOrigin));
  app.addHook('onSend', async (request, reply) => {
    reply.header('x-request-id', request.id).header('permissions-policy', permissionsPolicy);
    if (request.url.startsWith('/api/') && !reply.hasHeader('cache-control')) reply.header('cache-control', 'no-store');
  });
});

/**
 * Cookies go along with whatever a browser is told to send, so a write must come from our own pages. A request with an
 * API key carries no cookie's power, and a program that is no browser sends neither header.
 * @throws ProblemError `cross-site`
 */
function assertSameSite(request: FastifyRequest, ownOrigin: string): void {
  if (['GET', 'HEAD', 'OPTIONS'].includes(request.method) || request.headers.authorization) return;
  const site = request.headers['sec-fetch-site'];
  const origin = request.headers.origin;
  const refused =
    typeof site === 'string' ? !['same-origin', 'none'].includes(site) : !isOwn(origin, request, ownOrigin);
  if (refused) throw new ProblemError('cross-site', 'Changes are taken from this site’s own pages only.');
}

function isOwn(origin: string | undefined, request: FastifyRequest, ownOrigin: string): boolean {
  if (origin === undefined || origin === ownOrigin) return true;
  return URL.canParse(origin) && new URL(origin).host === request.headers.host;
}
