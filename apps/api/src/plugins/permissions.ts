import {
  type Permission,
  type Refusal,
  type Role,
  type RolePermission,
  type Route,
  refusalOf,
} from '@underlath/contract';
import { text } from '@underlath/rules';
import type { FastifyInstance } from 'fastify';
import fp from 'fastify-plugin';
import { type MaybeTranslated, ProblemError } from '../platform/problem-error.ts';
import { StartupError } from '../platform/startup-error.ts';
import type { Principal } from '../shared/principals.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Who may call the route. A route without one stops the server from starting. */
    permission?: Permission;
  }
}

interface Options {
  /** Below this address lie pages of a library that cannot declare for itself that anyone may read them. */
  publicPages?: string;
}

/** Refuses by default: no route exists without saying who may call it, and nobody else gets past. */
export const permissions = fp(
  async (app: FastifyInstance, { publicPages }: Options = {}) => {
    app.addHook('onRoute', (route) => {
      const { method, url, config } = route;
      if (publicPages && `${url}/`.startsWith(`${publicPages}/`) && config?.permission === undefined) {
        route.config = { ...config, permission: 'public' };
      } else if (!isPermission(config?.permission)) {
        throw new StartupError(
          `Route ${method} ${url} declares no permission; say who may call it in config.permission.`,
        );
      }
    });
    app.addHook('preParsing', async (request) => {
      // Without a route there is nothing to protect: the answer is "nothing at this address".
      if (request.is404) return;
      const method = request.method === 'HEAD' ? 'GET' : (request.method as Route['method']);
      assertAllowed(request.routeOptions.config.permission, request.principal, method);
    });
  },
  { dependencies: ['auth'] },
);

function isPermission(value: unknown): value is Permission {
  if (typeof value === 'object' && value !== null) return Array.isArray((value as { roles?: unknown }).roles);
  return value === 'public' || value === 'client-link' || value === 'session';
}

/** @throws ProblemError `not-signed-in` or `not-allowed` */
export function assertAllowed(
  permission: Permission | undefined,
  principal: Principal | null,
  method: Route['method'],
): void {
  if (permission === 'public') return;
  if (permission === 'client-link') {
    if (principal?.kind === 'client') return;
    throw new ProblemError(
      'not-signed-in',
      'This letter is not open in this browser. Open the link that your contractor sent you.',
    );
  }
  if (principal?.kind !== 'member' && principal?.kind !== 'api-key') {
    throw new ProblemError(
      'not-signed-in',
      text('Sign in first, or send an API key.', 'Primero entre a su cuenta, o envíe una clave de API.'),
      {
        headers: { 'www-authenticate': 'Bearer' },
      },
    );
  }
  const use = principal.kind === 'api-key' ? principal.use : 'full';
  const refusal = permission === undefined ? 'role' : refusalOf({ permission, method }, { ...principal, use });
  if (refusal) throw new ProblemError('not-allowed', words[refusal](principal.role, permission));
}

const roleWords: Record<Role, string> = { owner: 'dueño', estimator: 'estimador', crew: 'cuadrilla' };

const words: Record<Refusal, (role: Role, permission: Permission | undefined) => MaybeTranslated> = {
  'in-person': () => 'This needs a person who is signed in; an API key may not do it.',
  role: (role, permission) => {
    const takes = (permission as RolePermission | undefined)?.roles ?? [];
    return text(
      `Your role is ${role}; this takes ${takes.join(' or ')}.`,
      `Su función es ${roleWords[role]}; para esto hace falta ${takes.map((one) => roleWords[one]).join(' o ')}.`,
    );
  },
  'key-reads': () => 'This API key is for reading only.',
  'key-photos': () => 'This API key is for photos only.',
};
