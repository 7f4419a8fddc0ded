import { expect, test } from 'vitest';
import * as z from 'zod';
import { routes } from './index.ts';
import { refusalOf, seesMoney, withheld, withhold } from './rights.ts';
import type { Route } from './route.ts';

const off = { crewSeesMoney: false, estimatorsEditCostBook: false };
const crew = { kind: 'member', role: 'crew', use: 'full', switches: off } as const;
const all: [string, Route][] = Object.entries(routes);

/** `email` alone is an address of the company or of one of its people, who know each other. */
const isSecret = (field: string) => /Cents$|Email$|^sentTo$/.test(field);

/** Paths of fields in a schema, through lists, as `withheld` writes them. */
function fieldsOf(schema: z.core.JSONSchema._JSONSchema, path: readonly string[] = []): string[] {
  if (typeof schema !== 'object') return [];
  const inner = [
    ...(schema.anyOf ?? []),
    ...(schema.oneOf ?? []),
    ...(Array.isArray(schema.items) ? [] : [schema.items]),
  ];
  const below = Object.entries(schema.properties ?? {}).flatMap(([name, one]) => [
    [...path, name].join('.'),
    ...fieldsOf(one, [...path, name]),
  ]);
  return [...below, ...inner.flatMap((one) => (one === undefined ? [] : fieldsOf(one, path)))];
}

test.each(all.filter(([, route]) => typeof route.permission === 'object' && !refusalOf(route, crew)))(
  'every field of %s that holds money or a mail address is withheld from the crew',
  (name, route) => {
    const paths = withheld[name] ?? [];
    const answers = Object.values(route.answers).filter((answer) => answer instanceof z.ZodType);
    const fields = answers.flatMap((answer) => fieldsOf(z.toJSONSchema(answer, { unrepresentable: 'any' })));
    for (const path of paths) expect(fields).toContain(path);
    const isInWithheld = (field: string) => paths.some((path) => field === path || field.startsWith(`${path}.`));
    expect(fields.filter((field) => isSecret(field.split('.').at(-1) ?? '') && !isInWithheld(field))).toEqual([]);
  },
);

test('money is the crew’s to see only while the company says so, and everyone else’s always', () => {
  expect(seesMoney(crew)).toBe(false);
  expect(seesMoney({ ...crew, switches: { ...off, crewSeesMoney: true } })).toBe(true);
  expect(seesMoney({ ...crew, role: 'estimator' })).toBe(true);
});

test('withholding goes through lists, leaves the rest, and does not change what it was given', () => {
  const answer = {
    items: [
      { id: 1, linesCents: 5 },
      { id: 2, linesCents: null },
    ],
    next: null,
  };
  expect(withhold(answer, ['items.linesCents'])).toEqual({
    items: [
      { id: 1, linesCents: null },
      { id: 2, linesCents: null },
    ],
    next: null,
  });
  expect(answer.items[0]?.linesCents).toBe(5);
});

test('a part that is withheld as a whole does not come back by one of its fields', () => {
  const answer = { contract: { currentSumCents: 5 }, project: { clientEmail: 'a@b.example' } };
  expect(withhold(answer, withheld.projectOverview ?? [])).toEqual({ contract: null, project: { clientEmail: null } });
});
