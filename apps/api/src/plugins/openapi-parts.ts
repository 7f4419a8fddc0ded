import * as contract from '@underlath/contract';
import { problem, problems, routesByPart } from '@underlath/contract';
import * as z from 'zod';

interface Operation {
  requestBody?: object;
  responses: Record<string, object>;
  'x-problems'?: number[];
  'x-upload'?: { properties?: object; [other: string]: unknown };
}

/** As much of an OpenAPI document as is worked on here. */
export interface OpenApiDocument {
  paths: Record<string, Record<string, Operation>>;
  components: { schemas: Record<string, object>; responses?: Record<string, object>; [other: string]: unknown };
  [other: string]: unknown;
}

/** Every schema that the contract gives a name keeps it in the description. */
export function namedSchemas() {
  const registry = z.registry<{ id: string }>();
  const seen = new Set<unknown>();
  for (const [name, value] of Object.entries(contract)) {
    if (!(value instanceof z.ZodObject) || seen.has(value) || value === problem) continue;
    seen.add(value);
    registry.add(value, { id: `${name.charAt(0).toUpperCase()}${name.slice(1)}` });
  }
  return registry;
}

/** The parts of the API in the order they are read in. */
export const parts = Object.keys(routesByPart).map((name) => ({ name }));

const partOfRoute = new Map(
  Object.entries(routesByPart).flatMap(([part, routes]) => Object.keys(routes).map((name) => [name, part])),
);

/** The part of the API that a route is listed under. @throws Error for a route that is in none */
export function apiPartOf(name: string): string {
  const part = partOfRoute.get(name);
  if (part === undefined) throw new Error(`the route ${name} stands in no part of routesByPart`);
  return part;
}

interface Manners {
  isPublic: boolean;
  hasId: boolean;
  hasBody: boolean;
  isVersioned: boolean;
  isIdempotent: boolean;
  isUpload: boolean;
}

/** The statuses of problems that a route may answer with, by what it takes. */
export function problemStatuses(manners: Manners): number[] {
  const { isPublic, hasId, hasBody, isVersioned, isIdempotent, isUpload } = manners;
  const statuses = [
    ...(isPublic ? [] : [401, 403]),
    ...(hasId ? [404] : []),
    ...(hasBody ? [400, 409, 413, 415] : []),
    ...(isVersioned ? [412, 428] : []),
    ...(isIdempotent ? [409] : []),
    ...(isUpload ? [507] : []),
    ...[422, 429, 500, 503],
  ];
  return [...new Set(statuses)].sort((one, other) => one - other);
}

const responseName = (status: number): string => `Problem${status}`;

/** One response for each status of the catalogue, with the types it may carry. */
function problemResponses(): Record<string, object> {
  const statuses = [...new Set(Object.values(problems).map(({ status }) => status))];
  return Object.fromEntries(
    statuses.map((status) => {
      const types = Object.entries(problems).filter(([, one]) => one.status === status);
      const words = types.map(([type, { title }]) => `\`${type}\`: ${title}`).join('; ');
      const schema = { $ref: '#/components/schemas/Problem' };
      const content = { 'application/problem+json': { schema } };
      return [
        responseName(status),
        { description: `A problem document (RFC 9457). \`type\` ends in ${words}.`, content },
      ];
    }),
  );
}

/** Puts in what the library has no words for: the problems of each operation and the form of an upload; and leaves out what nobody refers to. */
export function finishDocument(document: OpenApiDocument): OpenApiDocument {
  for (const methods of Object.values(document.paths))
    for (const operation of Object.values(methods)) finish(operation);
  const { $schema: _dialect, ...problemSchema } = z.toJSONSchema(problem);
  const schemas: Record<string, object> = { ...document.components.schemas, Problem: problemSchema };
  const responses = problemResponses();
  const used = namesUsed([document.paths, responses], schemas);
  const components = {
    ...document.components,
    schemas: Object.fromEntries(Object.entries(schemas).filter(([name]) => used.has(name))),
    responses,
  };
  return { ...document, components };
}

function finish(operation: Operation): void {
  const { 'x-problems': statuses = [], 'x-upload': upload } = operation;
  for (const status of statuses) {
    operation.responses[String(status)] ??= { $ref: `#/components/responses/${responseName(status)}` };
  }
  delete operation['x-problems'];
  if (!upload) return;
  const { $schema: _dialect, properties, ...form } = upload;
  const file = {
    type: 'string',
    contentMediaType: 'application/octet-stream',
    description: 'The picture; it comes last.',
  };
  const schema = { ...form, properties: { ...properties, file }, required: ['file'] };
  operation.requestBody = { required: true, content: { 'multipart/form-data': { schema } } };
  delete operation['x-upload'];
}

function namesUsed(from: unknown, schemas: Record<string, object>): Set<string> {
  const used = new Set<string>();
  const left: unknown[] = [from];
  for (let next = left.pop(); next !== undefined; next = left.pop()) {
    for (const [, name = ''] of JSON.stringify(next).matchAll(/"#\/components\/schemas\/([^"]+)"/g)) {
      if (used.has(name)) continue;
      used.add(name);
      left.push(schemas[name]);
    }
  }
  return used;
}
