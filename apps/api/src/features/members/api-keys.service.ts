import type { ApiKey, BodyOut, memberRoutes } from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Database } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { notFound } from '../../platform/problem-error.ts';
import { hashSecret, newSecret } from '../../platform/secrets.ts';
import type { ApiKeyPrincipal } from '../../plugins/auth.ts';
import type { Caller } from '../caller.ts';
import { toApiKey } from './members.mapper.ts';
import * as members from './members.repository.ts';

/** Letters of a key that are kept and shown, to tell keys apart: the mark and 8 of its 43 random letters. */
const prefixLength = 12;

/** Keys for programs. The secret is shown once; the database keeps its hash. */
export class ApiKeysService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  async list(companyId: string): Promise<{ items: ApiKey[] }> {
    const rows = await this.database.inCompany(companyId, (tx) => members.listApiKeys(tx, companyId));
    return { items: rows.map(toApiKey) };
  }

  async create(
    { companyId, memberId }: Caller,
    { name, role }: BodyOut<typeof memberRoutes.createApiKey>,
  ): Promise<ApiKey & { secret: string }> {
    const secret = `ulk_${newSecret()}`;
    const row = await this.database.inCompany(companyId, (tx) =>
      members.insertApiKey(tx, {
        companyId,
        id: newId(),
        name,
        role,
        prefix: secret.slice(0, prefixLength),
        tokenHash: hashSecret(secret),
        createdById: memberId,
        createdAt: this.clock.now(),
      }),
    );
    return { ...toApiKey(row), secret };
  }

  /** @throws ProblemError `not-found` */
  async revoke(companyId: string, id: string): Promise<void> {
    const now = this.clock.now();
    const count = await this.database.inCompany(companyId, (tx) => members.revokeApiKeys(tx, companyId, { id }, now));
    if (count === 0) throw notFound('API key in use');
  }

  /** Whom a key works for, by the hash of its secret; null for an unknown or revoked one. */
  async principal(tokenHash: string): Promise<ApiKeyPrincipal | null> {
    const key = await this.database.behindFence({ tokenHash }, (tx) => members.findApiKeyByHash(tx, tokenHash));
    if (!key || key.revokedAt) return null;
    const { companyId, id, name, role, createdById } = key;
    return { kind: 'api-key', companyId, apiKeyId: id, name, role, actorId: createdById };
  }
}
