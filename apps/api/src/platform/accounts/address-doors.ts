import type { PrismaClient } from '../../generated/prisma/client.ts';
import { orAway } from '../database/database-errors.ts';
import type { Accounts } from './accounts.ts';
import { assertPassword, createUser, type NewPerson, wrongCredentials } from './credentials.ts';
import { verifyPassword } from './passwords.ts';

/** What an address and a password, or a link mailed to the address, prove about a person. */
export function addressDoors(people: PrismaClient): Pick<Accounts, 'createOrKnow' | 'knows' | 'proven'> {
  const find = (email: string) =>
    people.user.findUnique({
      where: { email: email.toLowerCase() },
      include: { accounts: { where: { providerId: 'credential' } } },
    });
  type Found = NonNullable<Awaited<ReturnType<typeof find>>>;
  const isTheirs = async ({ accounts: [account] }: Found, password: string) =>
    account?.password ? verifyPassword(account.password, password) : false;
  const create = async (person: NewPerson) => ({ ...(await createUser(people, person)), isNew: true });
  const confirm = (id: string) => people.user.update({ where: { id }, data: { emailVerified: true } });

  /** Never the account itself: whoever took the address in advance may have left a passkey, codes or an open link in it. */
  async function handOver(known: Found, person: NewPerson) {
    assertPassword(person.password, [person.name, person.email]);
    await people.user.update({ where: { id: known.id }, data: { email: `${known.id}@unconfirmed.invalid` } });
    return create(person);
  }

  return {
    createOrKnow: (person) =>
      orAway(async () => {
        const known = await find(person.email);
        if (!known) return create(person);
        if (await isTheirs(known, person.password)) return { userId: known.id, isNew: false };
        throw wrongCredentials();
      }),
    knows: (email, password) =>
      orAway(async () => {
        const known = await find(email);
        return known && (await isTheirs(known, password)) ? known.id : null;
      }),
    proven: (person) =>
      orAway(async () => {
        const known = await find(person.email);
        const isKnown = known !== null && (await isTheirs(known, person.password));
        if (known?.emailVerified && !isKnown) throw wrongCredentials();
        const found = !known
          ? await create(person)
          : isKnown
            ? { userId: known.id, isNew: false }
            : await handOver(known, person);
        await confirm(found.userId);
        return found;
      }),
  };
}
