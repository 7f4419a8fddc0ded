import { type ApiKey, type BodyOut, lowerRole, type memberRoutes } from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { invalidInput, notFound } from '../../platform/problem-error.ts';
import { hashSecret, newSecret } from '../../platform/secrets.ts';
import type { Caller } from '../../shared/caller.ts';
import { namesOf } from '../../shared/members.ts';
import type { ApiKeyPrincipal } from '../../shared/principals.ts';
import { asPerson, type PeopleLogService } from '../people-log/people-log.service.ts';
import { takeOwnersTurn } from './in-turn.ts';
import { toApiKey } from './members.mapper.ts';
import * as members from './members.repository.ts';

/** Letters of a key that are kept and shown, to tell keys apart: the mark and 8 of its 43 random letters. */
const prefixLength = 12;
const dayMs = 86_400_000;
/** Long enough to forget a key, short enough that a lost one ends by itself (common practice, no source). */
const usualDays = 365;
const longestDays = 731;
/** The last use is written so often at most; a busy key would write on every request. */
const useToldMs = 3_600_000;

/** Keys for programs. The secret is shown once; the database keeps its hash. */
export class ApiKeysService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly peopleLog: PeopleLogService,
  ) {}

  async list(companyId: string): Promise<{ items: ApiKey[] }> {
    return this.database.inCompany(companyId, async (tx) => {
      const rows = await members.listApiKeys(tx, companyId);
      const names = await namesOf(
        tx,
        companyId,
        rows.map(({ createdById }) => createdById),
      );
      return { items: rows.map((row) => toApiKey(row, names)) };
    });
  }

  /** @throws ProblemError `invalid-input` for an end that is past or more than two years ahead, `not-allowed` */
  async create(
    caller: Caller,
    { name, role, use, expiresAt }: BodyOut<typeof memberRoutes.createApiKey>,
  ): Promise<ApiKey & { secret: string }> {
    const { companyId, memberId, actor } = caller;
    const secret = `ulk_${newSecret()}`;
    const now = this.clock.now();
    const row = await this.database.inCompany(companyId, async (tx) => {
      await takeOwnersTurn(tx, caller);
      const key = await members.insertApiKey(tx, {
        companyId,
        id: newId(),
        name,
        role,
        use,
        prefix: secret.slice(0, prefixLength),
        tokenHash: hashSecret(secret),
        createdById: memberId,
        createdAt: now,
        expiresAt: endOf(expiresAt, now),
      });
      const data = { name, role, use, until: key.expiresAt.toISOString() };
      const note = { type: 'api-key.made', actor: asPerson(actor), subjectId: key.id, data } as const;
      await this.peopleLog.note(tx, companyId, note);
      return key;
    });
    return { ...toApiKey(row, new Map([[memberId, actor.name]])), secret };
  }

  /** @throws ProblemError `not-found`, `not-allowed` */
  async revoke(caller: Caller, id: string): Promise<void> {
    const { companyId, actor } = caller;
    const now = this.clock.now();
    await this.database.inCompany(companyId, async (tx) => {
      await takeOwnersTurn(tx, caller);
      if ((await members.revokeApiKeys(tx, companyId, { id }, now)) === 0) throw notFound('API key in use');
      await this.peopleLog.note(tx, companyId, { type: 'api-key.revoked', actor: asPerson(actor), subjectId: id });
    });
  }

  /** Whom a key works for, by the hash of its secret; null for one that is unknown, over, revoked, or whose maker left. */
  async principal(tokenHash: string): Promise<ApiKeyPrincipal | null> {
    return this.database.behindFence({ tokenHash }, async (tx) => {
      const key = await members.findApiKeyByHash(tx, tokenHash);
      const now = this.clock.now();
      if (!key || key.revokedAt || key.expiresAt <= now) return null;
      const { companyId, id, name, use, createdById } = key;
      await members.widenFence(tx, { companyId, tokenHash });
      const maker = await members.findMember(tx, companyId, createdById);
      if (!maker || maker.removedAt) return null;
      await tellUse(tx, key, now);
      const { crewSeesMoney, estimatorsEditCostBook } = await members.findCompany(tx, companyId);
      const role = lowerRole(key.role, maker.role);
      const switches = { crewSeesMoney, estimatorsEditCostBook };
      return { kind: 'api-key', companyId, apiKeyId: id, name, role, use, switches, actorId: createdById };
    });
  }
}

async function tellUse(tx: Tx, { companyId, id, lastUsedAt }: members.ApiKeyRow, now: Date): Promise<void> {
  if (lastUsedAt && now.getTime() - lastUsedAt.getTime() < useToldMs) return;
  await members.touchApiKey(tx, companyId, id, now);
}

function endOf(asked: string | undefined, now: Date): Date {
  const end = new Date(asked ?? now.getTime() + usualDays * dayMs);
  const aheadMs = end.getTime() - now.getTime();
  if (aheadMs > 0 && aheadMs <= longestDays * dayMs) return end;
  throw invalidInput('/expiresAt', 'The key must end after now and within two years.');
}
