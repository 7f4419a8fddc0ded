import { createHash } from 'node:crypto';
import { type SeenDevice, shortenAddress } from '../../platform/accounts/sessions.ts';
import type { Database } from '../../platform/database/database.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import { listPlacesOf } from './people-log.repository.ts';
import { nobody, type PeopleLogService } from './people-log.service.ts';

/** The server's own log, as a request carries it. */
export interface ServerLog {
  warn(facts: object, message: string): void;
  error(facts: object, message: string): void;
}

/** The network that a sign-in came from, as it is kept; nothing where it is not known. */
export const fromOf = ({ address }: SeenDevice = {}): { from?: string } =>
  address ? { from: shortenAddress(address) } : {};

/** Passwords that were tried for an e-mail address and are not its own. */
export class RefusedSignIns {
  constructor(
    private readonly database: Database,
    private readonly peopleLog: PeopleLogService,
  ) {}

  /** Does the work; a wrong password is noted before it is thrown on. */
  async watch<Result>(email: string, device: SeenDevice, log: ServerLog, work: () => Promise<Result>): Promise<Result> {
    try {
      return await work();
    } catch (error) {
      if (error instanceof ProblemError && error.type === 'wrong-credentials') this.note(email, device, log);
      throw error;
    }
  }

  /** Beside the answer and not before it, or the wait would tell which addresses are known. */
  note(email: string, device: SeenDevice, log: ServerLog): void {
    this.write(email, device, log).catch(({ message }: Error) =>
      log.error({ message }, 'a refused sign-in could not be noted'),
    );
  }

  /** Where the person works; a try at an address that works nowhere here is for the server's log, with its domain only. */
  async write(email: string, device: SeenDevice, log: Pick<ServerLog, 'warn'>): Promise<void> {
    const data = { why: 'password', ...fromOf(device) };
    const plain = email.toLowerCase();
    const user = await this.database.people.user.findUnique({ where: { email: plain }, select: { id: true } });
    const places = user ? await this.placesOf(user.id) : [];
    for (const { companyId, id } of places) {
      const note = { type: 'sign-in.refused', actor: nobody, subjectId: id, data } as const;
      await this.database.inCompany(companyId, (tx) => this.peopleLog.note(tx, companyId, note));
    }
    if (places.length > 0) return;
    const domain = plain.slice(plain.lastIndexOf('@') + 1);
    // The same address is told from others without saying which it is.
    const person = createHash('sha256').update(plain).digest('hex').slice(0, 12);
    log.warn({ domain, person, ...data }, 'sign-in.refused of an address that works for no company here');
  }

  private placesOf(userId: string) {
    return this.database.behindFence({ userId }, (tx) => listPlacesOf(tx, userId));
  }
}
