import * as z from 'zod';
import { basis, locale } from './common.ts';
import { checkAnswer, findingContext, inputs, source } from './findings.ts';
import { route } from './route.ts';

const byId = z.object({ checkId: z.string().max(80) });
const language = z.object({ locale: locale.optional() });

/** A check as the rules package describes it. What is not named here (fields, editions, words) is the rules package's own shape. */
export const checkDescription = z.looseObject({
  id: z.string(),
  title: z.string(),
  defaultEdition: z.string(),
  sources: z.array(source),
  doesNotCover: z.array(z.string()),
  /** What the rule asks, in our words. */
  rule: z.string(),
  /** What it answers under `values`, each with its formula in words. */
  values: z.array(z.object({ name: z.string(), label: z.string(), how: z.string() })),
  /** Worked cases; each is run as a test. */
  cases: z.array(
    z.object({
      name: z.string(),
      origin: z.enum([...basis.options, 'hand-worked']),
      source: z.string(),
    }),
  ),
});

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
