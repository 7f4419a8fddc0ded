import { STATUS_CODES } from 'node:http';
import type { FieldProblem, Locale, Problem, ProblemType } from '@underlath/contract';
import { text } from '@underlath/rules';
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { hasZodFastifySchemaValidationErrors, isResponseSerializationError } from 'fastify-type-provider-zod';
import { isDatabaseAway } from '../platform/database/database-errors.ts';
import {
  FileMissingError,
  FileTooLargeError,
  StorageFullError,
  StoreAwayError,
} from '../platform/file-store/store-errors.ts';
import { ProblemError, readWords } from '../platform/problem-error.ts';
import { unknownNames } from '../shared/unknown-names.ts';
import { preferredLocale } from './preferred-locale.ts';

/** Every refusal and failure leaves as a problem document (RFC 9457) of the catalogue. */
export const problemDocuments = fp(async (app: FastifyInstance) => {
  const methodsAt = collectMethods(app);
  app.setErrorHandler((error: FastifyError, request, reply) => {
    const problem = toProblem(error, request);
    if (problem.status >= 500) request.log.error({ err: error, route: routeName(request) }, problem.type);
    return sendProblem(request, reply, problem);
  });
  app.setNotFoundHandler((request, reply) => sendProblem(request, reply, unknownAddress(request, methodsAt)));
});

/** Answers with a problem document; also used by hooks that must answer themselves. */
export function sendProblem(request: FastifyRequest, reply: FastifyReply, problem: ProblemError): FastifyReply {
  const locale = preferredLocale(request.headers['accept-language']);
  const document: Problem = {
    type: `urn:underlath:problem:${problem.type}`,
    title: problem.title,
    status: problem.status,
    detail: readWords(problem.detail, locale),
    instance: `urn:uuid:${request.id}`,
    ...(problem.errors && { errors: atMost(problem.errors.map((error) => readable(error, locale))) }),
    ...(problem.contact && { contact: problem.contact }),
  };
  return reply
    .code(problem.status)
    .headers(problem.headers)
    .type('application/problem+json')
    .serializer((payload: unknown) => JSON.stringify(payload))
    .send(document);
}

const readable = ({ words, ...fault }: NonNullable<ProblemError['errors']>[number], locale: Locale): FieldProblem => ({
  ...fault,
  ...(words !== undefined && { words: readWords(words, locale) }),
});

/** The most things told of one request; the rest is counted. */
const TOLD = 100;

function atMost(errors: readonly FieldProblem[]): FieldProblem[] {
  const more = errors.length - TOLD;
  if (more <= 0) return [...errors];
  return [...errors.slice(0, TOLD), { pointer: '', detail: `and ${more} more things that do not fit` }];
}

function toProblem(error: FastifyError, request: FastifyRequest): ProblemError {
  if (error instanceof ProblemError) return error;
  if (hasZodFastifySchemaValidationErrors(error)) return invalidRequest(error);
  const known = ofPlatform(error) ?? ofFramework(error, request);
  if (known) return known;
  const where = isResponseSerializationError(error) ? ' while the answer was written' : '';
  return new ProblemError(
    'internal-error',
    text(
      `Something broke on our side${where}; nothing you sent is at fault. Try again, and tell whoever runs the server if it stays.`,
      'Algo falló de nuestro lado; no es culpa de lo que envió. Intente otra vez y, si sigue igual, avise a quien maneja el servidor.',
    ),
    { cause: error },
  );
}

const tryAgain = { 'retry-after': '5' };

function ofPlatform(error: Error): ProblemError | undefined {
  if (error instanceof FileTooLargeError) {
    const megabytes = Math.floor(error.maxBytes / 1024 / 1024);
    return new ProblemError(
      'too-large',
      text(
        `The file is larger than ${megabytes} MB, the most that is taken; send a smaller one.`,
        `El archivo pasa de ${megabytes} MB, que es lo máximo; envíe uno más pequeño.`,
      ),
    );
  }
  if (error instanceof StorageFullError) {
    return new ProblemError(
      'storage-full',
      text(
        'There is no room left for files; nothing of this one was kept. Free some space on the server, then send it again.',
        'No queda espacio para archivos y de este no se guardó nada. Hay que liberar espacio en el servidor y enviarlo otra vez.',
      ),
    );
  }
  if (error instanceof StoreAwayError) {
    return new ProblemError(
      'store-away',
      text(
        'The file store does not answer; nothing was changed. Try again in a moment.',
        'El almacén de archivos no responde; no se cambió nada. Intente otra vez en un momento.',
      ),
      { headers: tryAgain },
    );
  }
  if (error instanceof FileMissingError) {
    return new ProblemError('store-away', 'The file should be in the store and is not. Tell whoever runs the server.', {
      cause: error,
    });
  }
  if (isDatabaseAway(error)) {
    return new ProblemError(
      'database-away',
      text(
        'The database does not answer; nothing was changed. Try again in a moment.',
        'La base de datos no responde; no se cambió nada. Intente otra vez en un momento.',
      ),
      { headers: tryAgain },
    );
  }
  return undefined;
}

/** Codes of Fastify and its plugins that mean something to the caller. */
const frameworkProblems: Record<string, { type: ProblemType; detail: (request: FastifyRequest) => string }> = {
  FST_ERR_CTP_INVALID_MEDIA_TYPE: {
    type: 'unsupported-media',
    detail: (request) =>
      `The body came as ${request.headers['content-type'] ?? 'no named type'}; this endpoint accepts application/json${/photos/.test(request.routeOptions.url ?? '') ? ' or multipart/form-data' : ''}.`,
  },
  FST_ERR_CTP_BODY_TOO_LARGE: {
    type: 'too-large',
    detail: (request) =>
      `The body is larger than ${request.routeOptions.bodyLimit} bytes, the most that is taken here.`,
  },
  FST_ERR_CTP_EMPTY_JSON_BODY: {
    type: 'malformed-request',
    detail: () => 'The request says it carries JSON, but its body is empty.',
  },
  FST_ERR_CTP_INVALID_JSON_BODY: { type: 'malformed-request', detail: () => 'The body is not readable JSON.' },
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: {
    type: 'malformed-request',
    detail: () => 'The body is not as long as its Content-Length says.',
  },
  FST_ERR_BAD_URL: { type: 'malformed-request', detail: () => 'The address is not readable.' },
  FST_INVALID_MULTIPART_CONTENT_TYPE: {
    type: 'unsupported-media',
    detail: () => 'This address takes multipart/form-data.',
  },
  FST_REQ_FILE_TOO_LARGE: { type: 'too-large', detail: () => 'The file is larger than is taken here.' },
  FST_FILES_LIMIT: { type: 'too-large', detail: () => 'More files came than are taken in one request.' },
  FST_FIELDS_LIMIT: { type: 'too-large', detail: () => 'More fields came than are taken in one request.' },
  FST_PARTS_LIMIT: { type: 'too-large', detail: () => 'More parts came than are taken in one request.' },
};

/** The parser of uploads has no codes for a body that ends too soon, or has no parts to be told apart by. */
const brokenUpload = /^(Unexpected end of multipart data|\w+ terminated early|Multipart: )/;

function ofFramework(error: FastifyError, request: FastifyRequest): ProblemError | undefined {
  if (brokenUpload.test(error.message)) {
    const detail =
      'The upload was cut off before its end, or is not readable multipart/form-data; nothing was kept. Send it again.';
    return new ProblemError('malformed-request', detail, { cause: error });
  }
  const known = frameworkProblems[error.code];
  if (known) return new ProblemError(known.type, known.detail(request), { cause: error });
  if (error instanceof SyntaxError && error.statusCode === 400) {
    return new ProblemError('malformed-request', 'The body is not readable JSON.', { cause: error });
  }
  const status = error.statusCode ?? 500;
  if (status >= 400 && status < 500) {
    return new ProblemError(
      'malformed-request',
      `The request could not be read: ${STATUS_CODES[status] ?? error.code}.`,
      { cause: error },
    );
  }
  return undefined;
}

const contexts: Record<string, string> = { body: '', querystring: 'query', params: 'params', headers: 'header' };

function invalidRequest(error: FastifyError): ProblemError {
  const prefix = contexts[error.validationContext ?? 'body'] ?? '';
  const errors = (error.validation ?? []).flatMap((issue) => {
    const path = issue.instancePath === '/' ? '' : issue.instancePath;
    const unknown = issue.keyword === 'unrecognized_keys' ? (issue.params.keys as string[]) : undefined;
    if (unknown) return unknownNames(unknown, `${prefix}${path}`);
    return [{ pointer: `${prefix}${path}`, detail: issue.message ?? 'does not fit' }];
  });
  const unknownId = prefix === 'params';
  if (unknownId)
    return new ProblemError('not-found', 'There is no such thing here: the address carries no readable id.', {
      errors,
    });
  const shown = errors.slice(0, 3).map(({ pointer, detail }) => `${pointer || 'the body'}: ${detail}`);
  const more = errors.length > shown.length ? ` (and ${errors.length - shown.length} more)` : '';
  return new ProblemError('invalid-input', `${shown.join('; ')}${more}.`, { errors });
}

function unknownAddress(request: FastifyRequest, methodsAt: (path: string) => Set<string>): ProblemError {
  const path = request.url.split('?')[0] ?? '';
  const methods = methodsAt(path);
  if (methods.size > 0) {
    const allow = [...methods].sort().join(', ');
    return new ProblemError('method-not-allowed', `This address does not take ${request.method}; it takes ${allow}.`, {
      headers: { allow },
    });
  }
  return new ProblemError('not-found', 'There is nothing at this address.');
}

/** Which methods an address takes, from the routes as they are registered. */
function collectMethods(app: FastifyInstance): (path: string) => Set<string> {
  const routes: { pattern: RegExp; methods: string[] }[] = [];
  app.addHook('onRoute', ({ url, method }) => {
    if (!url.startsWith('/api/')) return;
    const pattern = url.replace(/[.+^$()|[\]{}]/g, '\\$&').replace(/:\w+/g, '[^/]+');
    routes.push({ pattern: new RegExp(`^${pattern}$`), methods: [method].flat() });
  });
  return (path) => new Set(routes.filter(({ pattern }) => pattern.test(path)).flatMap(({ methods }) => methods));
}

/** The registered pattern, never the address itself: a client link's secret can be in it. */
export const routeName = (request: FastifyRequest): string =>
  `${request.method} ${request.routeOptions.url ?? '(no route)'}`;
