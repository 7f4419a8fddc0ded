import * as z from 'zod';
import { locale } from './common.ts';
import { checkAnswer, findingContext, inputs } from './findings.ts';
import { route } from './route.ts';

const byId = z.object({ checkId: z.string().max(80) });
const language = z.object({ locale: locale.optional() });

/** A check as the rules package describes it: fields, editions, sources, cases. The shape is the rules package's own. */
export const checkDescription = z.looseObject({ id: z.string(), title: z.string(), defaultEdition: z.string() });

export const checkRoutes = {
  listChecks: route({
    name: 'listChecks',
    method: 'GET',
    path: '/checks',
    permission: 'public',
    summary: 'Every check: what to measure, its rule, sources and cases',
    query: language,
    answers: { 200: z.object({ rulesVersion: z.string(), items: z.array(checkDescription) }) },
  }),
  getCheck: route({
    name: 'getCheck',
    method: 'GET',
    path: '/checks/:checkId',
    permission: 'public',
    summary: 'One check',
    params: byId,
    query: language,
    answers: { 200: checkDescription },
  }),
  evaluateCheck: route({
    name: 'evaluateCheck',
    method: 'POST',
    path: '/checks/:checkId/evaluate',
    permission: 'public',
    summary: 'Judge measurements against a rule; stores nothing',
    params: byId,
    query: language,
    body: z.strictObject({ edition: z.string().max(60).optional(), inputs, context: findingContext.optional() }),
    answers: { 200: checkAnswer },
  }),
} as const;
