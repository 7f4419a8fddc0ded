import { role } from './common.ts';
import { routes } from './index.ts';
import { keyUse } from './members.ts';
import { type CompanySwitches, refusalOf, withheld } from './rights.ts';
import type { Route } from './route.ts';

const off: CompanySwitches = { crewSeesMoney: false, estimatorsEditCostBook: false };
const on: CompanySwitches = { crewSeesMoney: true, estimatorsEditCostBook: true };

const all: readonly Route[] = Object.values(routes);
const isByRole = ({ permission }: Route): boolean => typeof permission === 'object' || permission === 'session';
const addressOf = ({ method, path }: Route): string => `\`${method} ${path}\``;
const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
const table = (heads: readonly string[], rows: readonly (readonly string[])[]): string =>
  [row(heads), row(heads.map(() => '---')), ...rows.map(row)].join('\n');

/** The whole table of who may see and do what, as Markdown, from the same rule that the server asks. */
export function rightsPage(): string {
  return `# Who may see and do what

Made by \`npm run handbook\` from the permissions of the routes and the one rule in \`src/rights.ts\`, which the server asks on every request; a test holds this page to them. Another test calls every route as every role, signed in and by every kind of API key, and searches the answers for money and mail addresses.

- A **role in force** is the one a member has now. An API key does what its own role and its maker's present role both may; it is dead when its maker has left, when its day is past, or when it is revoked.
- **Rights are changed in person**: members, invitations, keys and the company's details are never changed by a key. A lower role or a removal ends the keys' surplus and the open invitations of whoever loses it. A company keeps an owner.
- **"If switched on"** is what the owner of a company decides under People. Both switches are off at first.

## What is shown

What is not shown is \`null\`, on reading and on changing alike.

${shown()}

The crew's list of what is to be done has no letters that did not arrive and no questions of clients, which name addresses and prices. The pages of prices, cost book, change orders, contract and record are the office's, with the switch on too.

## What may be done

An API key may be for everything its role may (full), for reading only (read), or for photos only (photos).

${done()}

## Without a role

${table(
  ['Who', 'Route', 'What it does'],
  all
    .filter((route) => !isByRole(route))
    .map((route) => [
      route.permission === 'public' ? 'anyone' : 'holder of a client link',
      addressOf(route),
      route.summary,
    ]),
)}
`;
}

const fieldNames: Readonly<Record<string, string>> = {
  contract: 'contract sums, days and finish',
  originalSumCents: 'original contract sum',
  contingencyCents: 'contingency',
  linesCents: "price of a finding's own lines",
  clientEmail: "client's e-mail address",
  sentTo: 'where a notice went',
  to: 'where a notice would go',
};

function shown(): string {
  const wheres = new Map<string, string[]>();
  for (const [name, paths] of Object.entries(withheld)) {
    for (const path of paths) {
      const field = path.split('.').at(-1) ?? path;
      wheres.set(field, [...(wheres.get(field) ?? []), `\`${name}\``]);
    }
  }
  return table(
    ['Field', 'What it is', 'In the answers of', 'Owner', 'Estimator', 'Crew'],
    [...wheres].map(([field, names]) => [
      `\`${field}\``,
      fieldNames[field] ?? '',
      names.join(', '),
      'yes',
      'yes',
      'if switched on',
    ]),
  );
}

function done(): string {
  const rows = all.filter(isByRole).map((route) => {
    const says = role.options.map((one) => {
      const isRefused = (switches: CompanySwitches) =>
        refusalOf(route, { kind: 'member', role: one, use: 'full', switches }) !== null;
      if (!isRefused(off)) return 'yes';
      return isRefused(on) ? 'no' : 'if switched on';
    });
    const keys = keyUse.options.filter((use) =>
      role.options.some((one) => !refusalOf(route, { kind: 'api-key', role: one, use, switches: off })),
    );
    return [route.summary, addressOf(route), ...says, keys.join(', ') || 'never'];
  });
  return table(['What it does', 'Route', 'Owner', 'Estimator', 'Crew', 'API key'], rows);
}
