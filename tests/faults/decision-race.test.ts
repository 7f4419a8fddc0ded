import { setTimeout } from 'node:timers/promises';
import type { ChangeOrder } from '@underlath/contract';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { callerOf } from '../../apps/api/src/features/caller.ts';
import type { Sent } from '../../apps/api/src/features/change-orders/sending.service.ts';
import { ProblemError } from '../../apps/api/src/platform/problem-error.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';
import { rounds } from '../support/rounds.ts';

const races = rounds({ gate: 20, long: 200 });
/** What an edit reads before its turn takes about so long. */
const headStartMs = 20;
let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
});
afterAll(() => api.close());

/** The services and the database are real; only HTTP is left out, so that the moments lie closer together. */
const caller = () => callerOf({ kind: 'member', ...job.owner, actorId: job.owner.memberId });

const send = ({ id, version }: Pick<ChangeOrder, 'id' | 'version'>): Promise<Sent> =>
  api.deps.services.sending.send(caller(), id, version, { expiresInDays: 14, byPart: false, withEnglish: true });

const offer = async (): Promise<Sent> => send(await job.draft([(await job.priced()).id]));

/** Resolves to `done` or the type of the refusal; anything else is a failure of the test. */
const outcomeOf = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => 'done',
    (error: unknown) => {
      if (error instanceof ProblemError) return error.type;
      throw error;
    },
  );

test(`in ${races} races of two answers against an edit, no decision falls on a replaced version and none has two`, async () => {
  const { approvals, changeOrders, links } = api.deps.services;
  let sent = await offer();
  const won = { client: 0, office: 0 };
  for (let round = 0; round < races; round += 1) {
    const { principal } = await links.open(new URL(sent.link).hash.slice(1));
    const { changeOrder, sha256 } = sent;
    const { contract } = await approvals.letter(principal);
    const answer = {
      kind: 'approved',
      version: changeOrder.draft.version,
      sha256,
      ledger: contract.ledger,
      signerName: 'Ines Wren',
      nameConfirmed: false,
      consent: true,
      consentId: changeOrder.draft.consent.id,
      acknowledged: false,
      reason: '',
      locale: 'en',
    } as const;
    const decide = () => outcomeOf(approvals.decide(principal, answer, 'race'));
    const revise = () =>
      outcomeOf(changeOrders.change(caller(), changeOrder.id, changeOrder.version, { days: (round % 5) + 1 }));
    // Who is called first usually wins, so they take turns; the second answer comes after the edit in both. An edit reads
    // more before its turn than an answer does, so that answers come a little later in its rounds, now more and now less.
    const later = () => setTimeout(round % headStartMs).then(decide);
    const results = round % 2 === 0 ? [decide(), revise(), decide()] : [revise(), later(), later()];
    const [first, second, third] = await Promise.all(results);
    const [answers, revised] = round % 2 === 0 ? [[first, third], second] : [[second, third], first];
    const clientWon = revised !== 'done';
    expect({ round, answers, revised }).toEqual({
      round,
      answers: clientWon ? ['done', 'done'] : ['link-replaced', 'link-replaced'],
      revised: clientWon ? 'stale-version' : 'done',
    });
    won[clientWon ? 'client' : 'office'] += 1;
    const order = await changeOrders.get(job.owner.companyId, changeOrder.id);
    sent = clientWon ? await offer() : await send(order);
  }
  expect(Math.min(won.client, won.office), JSON.stringify(won)).toBeGreaterThan(races / 20);
  await assertRows();
}, 600_000);

/** The same asked of the rows themselves: each decision belongs to the version that stands, and to the bytes that were sent. */
async function assertRows(): Promise<void> {
  const { rows } = await api.platform.database.ownerPool.query(
    `select d.version, o.sent_version, o.state::text, d.kind::text, d.sha256 = v.sha256 as same,
       (select count(*)::int from event e where e.subject_id = d.change_order_id and e.type = 'change-order.decided') as events,
       (select count(*)::int from mail m where m.text like '%' || d.sha256 || '%' and m.kind in ('decision-told', 'decision-copy')) as letters
     from decision d
     join change_order o on o.company_id = d.company_id and o.id = d.change_order_id
     join change_order_version v on v.company_id = d.company_id and v.change_order_id = d.change_order_id and v.version = d.version`,
  );
  expect(rows.length).toBeGreaterThan(0);
  for (const row of rows) {
    expect(row).toEqual({ ...row, sent_version: row.version, state: row.kind, same: true, events: 1, letters: 2 });
  }
  const record = await api.deps.services.records.verify(job.owner.companyId, job.project.id);
  expect(record).toMatchObject({ ok: true, faults: [] });
}
