import type { z } from 'zod';
import type { Role } from './common.ts';

/** Something an owner decides for the whole company. */
export type CompanySwitch = 'crewSeesMoney' | 'estimatorsEditCostBook';

/** Whom a route serves: members and API keys with one of the roles. */
export interface RolePermission {
  readonly roles: readonly Role[];
  /** A person who is signed in, never an API key. */
  readonly session?: true;
  /** A key for photos only may call it too. */
  readonly photos?: true;
  /** Another role that may call it while the company's switch is on. */
  readonly opens?: { readonly switch: CompanySwitch; readonly role: Role };
}

/** Who may call a route. `public` anyone; `client-link` the holder of a live client link; `session` any member signed in; or by role. */
export type Permission = 'public' | 'client-link' | 'session' | RolePermission;

/** Owner and estimator decide and price. */
export const office = { roles: ['owner', 'estimator'] } as const;
/** Everyone of the company. */
export const everyone = { roles: ['owner', 'estimator', 'crew'] } as const;
/** Everyone, and keys that are for photos only. */
export const photoWork = { ...everyone, photos: true } as const;
export const ownerOnly = { roles: ['owner'] } as const;
/** Rights are changed by a person: a key that could make keys would outlive whoever made it. */
export const ownerInPerson = { roles: ['owner'], session: true } as const;
/** The owner, and estimators while the owner lets them. */
export const costBookEditors = {
  roles: ['owner'],
  opens: { switch: 'estimatorsEditCostBook', role: 'estimator' },
} as const;

/** One operation of the API: the server serves it, the dashboard calls it, OpenAPI describes it. Paths are below `/api/v1`. */
export interface Route {
  readonly name: string;
  readonly method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  readonly path: string;
  readonly permission: Permission;
  readonly summary: string;
  /** Accepts `Idempotency-Key`: the same key and body answer the same again. */
  readonly idempotent?: boolean;
  /** Needs `If-Match` with the `ETag` last seen. */
  readonly versioned?: boolean;
  readonly params?: z.ZodType;
  readonly query?: z.ZodType;
  readonly body?: z.ZodType;
  /** Fields of a form that come before the part `file`, for a route that takes one. */
  readonly upload?: z.ZodType;
  /** Answers by status; a string is the media type of a binary answer, null an empty one. */
  readonly answers: Readonly<Record<number, z.ZodType | string | null>>;
}

export const route = <const R extends Route>(definition: R): R => definition;

type In<S> = S extends z.ZodType ? z.input<S> : undefined;
type Out<S> = S extends z.ZodType ? z.output<S> : undefined;
type Bodies<A> = { [K in keyof A]: A[K] extends z.ZodType ? z.output<A[K]> : never }[keyof A];

/** What a caller gives, and what a handler gets. */
export type ParamsIn<R extends Route> = In<R['params']>;
export type ParamsOut<R extends Route> = Out<R['params']>;
export type QueryIn<R extends Route> = In<R['query']>;
export type QueryOut<R extends Route> = Out<R['query']>;
export type BodyIn<R extends Route> = In<R['body']>;
export type BodyOut<R extends Route> = Out<R['body']>;
/** The JSON answer of a success. */
export type AnswerOf<R extends Route> = Bodies<R['answers']>;
