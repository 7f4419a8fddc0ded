import type { PeopleActor, PeopleEvent, PeopleEventType, PeopleFacts } from '@underlath/contract';
import { peopleFacts } from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import type { Actor } from '../../shared/actor.ts';
import type { NewestFirst } from '../../shared/paging.ts';
import * as log from './people-log.repository.ts';

export interface PeopleNote {
  type: PeopleEventType;
  actor: PeopleActor;
  /** The member, invitation or key it happened to. */
  subjectId?: string;
  data?: PeopleFacts;
}

/** Somebody who was not let in: nobody knows who it was. */
export const nobody: PeopleActor = { kind: 'nobody', id: '', name: '' };

/** Whom a record names, for the log: a client changes nothing that it tells of. */
export const asPerson = ({ kind, id, name }: Actor): PeopleActor => ({
  kind: kind === 'client' ? 'nobody' : kind,
  id,
  name,
});

/** A name of a fact that may not be kept; a slip of ours, not of a caller. */
const secretName = /password|secret|token|link|code$/i;
const pageOfExport = 1000;

/** What happened to people, keys and rights. Each note is written in the transaction of the change it tells of. */
export class PeopleLogService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  /** @throws Error for facts that could hold a secret, or are too long to be facts */
  async note(tx: Tx, companyId: string, { type, actor, subjectId, data = {} }: PeopleNote): Promise<void> {
    const secret = Object.keys(data).find((name) => secretName.test(name));
    if (secret) throw new Error(`the people log keeps no secrets, and "${secret}" names one`);
    await log.insertPeopleEvent(tx, {
      companyId,
      id: newId(),
      at: this.clock.now(),
      type,
      actorKind: actor.kind,
      actorId: actor.id,
      actorName: actor.name,
      subjectId: subjectId ?? null,
      data: peopleFacts.parse(data),
    });
  }

  /** Newest first, from after `position`. */
  async list(
    companyId: string,
    ask: { type: PeopleEventType | undefined; position: NewestFirst | undefined; take: number },
  ): Promise<PeopleEvent[]> {
    const rows = await this.database.inCompany(companyId, (tx) => log.listPeopleEvents(tx, companyId, ask));
    return rows.map(toPeopleEvent);
  }

  /** All of it, newest first, some at a time, so that a long log is never held whole. */
  async *walk(companyId: string, type: PeopleEventType | undefined): AsyncGenerator<PeopleEvent[]> {
    for (let position: NewestFirst | undefined; ; ) {
      const events = await this.list(companyId, { type, position, take: pageOfExport });
      yield events;
      const last = events.at(-1);
      if (!last || events.length < pageOfExport) return;
      position = { at: last.at, id: last.id };
    }
  }
}

function toPeopleEvent({ id, at, type, actorKind, actorId, actorName, subjectId, data }: log.PeopleEventRow) {
  return {
    id,
    at: at.toISOString(),
    type,
    actor: { kind: actorKind, id: actorId, name: actorName },
    subjectId,
    data,
  } as PeopleEvent;
}
