import { createHash } from 'node:crypto';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { verifyEverything } from '../../apps/api/src/commands/verification/verification.ts';
import { sayCompared } from '../../apps/api/src/commands/verification/words.ts';
import { viewKey } from '../../apps/api/src/features/photos/photo-files.ts';
import { chainHash } from '../../apps/api/src/features/records/record-hash.ts';
import { tableNames, tableOf } from '../../apps/api/src/features/records/record-tables.data.ts';
import { headsFolder, readHeads } from '../../apps/api/src/features/records/record-witnesses.ts';
import { canonicalJson } from '../../apps/api/src/platform/hash.ts';
import { newId } from '../../apps/api/src/platform/ids.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';
import { fixture, upload } from '../support/site.ts';

const v1 = '/api/v1';
let api: TestApi;
let job: Job;
/** The approved change order, with both kinds of entries before and after it in the record. */
let orderId: string;
let photoIds: string[];
/** Somebody with the database in hand: superuser, triggers off. */
let intruder: pg.Client;

beforeAll(async () => {
  api = await startTestApi();
  intruder = new pg.Client({ connectionString: api.databaseUrl });
  await intruder.connect();
  await intruder.query(`set session_replication_role = 'replica'`);
  job = await startJob(api);
  await tellTheStory();
  // Heads are kept by the worker, moments after what they tell of.
  const heads = async () => expect(await readHeads(api.platform.fileStore)).toHaveLength(keptHeads);
  await vi.waitFor(heads, { timeout: 30_000 });
  expect((await verifyEverything(api.platform)).faults).toEqual([]);
  await keepAll();
}, 120_000);
afterAll(async () => {
  await intruder.end();
  await api.close();
});

/** Of the project's opening, one saved book, terms, payment and its taking back, sending, question, answer, decision, notice; and of five mails. */
const keptHeads = 15;

async function tellTheStory(): Promise<void> {
  const { owner, project } = job;
  const http = () => api.http(owner);
  const path = `${v1}/projects/${project.id}`;
  const { body: book } = await http().get(`${v1}/cost-book`).expect(200);
  await http().put(`${v1}/cost-book`).set('if-match', `"${book.version}"`).send({ book: book.book }).expect(200);
  const terms = {
    retainagePct: 10,
    netDecreaseReturnsOverheadAndProfit: false,
    dayKind: 'working',
    daysOff: [],
    noticeDays: 5,
    noticeDayKind: 'calendar',
    noticeMethods: ['e-mail'],
    milestones: [],
  };
  await http().put(`${path}/contract/terms`).set('if-match', '"0"').send(terms).expect(200);
  const payment = { kind: 'payment', name: 'Framing', happenedOn: '2026-03-09', cents: 500_000 };
  const paid = await http().post(`${path}/contract/entries`).send(payment).expect(201);
  await http().post(`${v1}/contract-entries/${paid.body.id}/take-back`).send({ why: 'Entered twice' }).expect(200);

  const finding = await job.priced();
  const other = await job.priced({ title: 'Second plate' });
  photoIds = [];
  for (const name of ['plain.png', 'no-zone.jpg']) {
    const { body } = await upload(api, owner, project.id, fixture(name), { findingId: finding.id, caption: name });
    photoIds.push(body.id);
  }
  const ready = async () => {
    const { items } = (await http().get(`${path}/photos`)).body;
    expect(items.map((one: { derivative: { state: string } }) => one.derivative.state)).toEqual(['ready', 'ready']);
  };
  await vi.waitFor(ready, { timeout: 30_000 });
  const notice = {
    how: 'noted',
    method: 'certified-mail',
    sentOn: '2026-03-04',
    to: 'Ines Wren',
    text: 'The plate was cut.',
  };
  await http().post(`${v1}/findings/${finding.id}/notices`).send(notice).expect(201);

  const { changeOrder, link } = await job.send(await job.draft([finding.id, other.id]), { byPart: true });
  orderId = changeOrder.id;
  const open = await job.open(link);
  const client = () => api.http({ cookie: open.cookie });
  const asked = await client()
    .post(`${open.path}/questions`)
    .send({ version: 1, name: 'Ines Wren', text: 'How long?' })
    .expect(201);
  await http()
    .post(`${v1}/change-orders/${orderId}/questions/${asked.body.id}/answer`)
    .send({ answer: 'Three days.' })
    .expect(200);
  const letter = (await client().get(open.path).expect(200)).body;
  expect((await job.decide(open, letter, { findingIds: [finding.id] })).status).toBe(200);
  const goneOut = async () => {
    const { rows } = await sql(`select 1 from mail where state = 'waiting'`);
    expect(rows).toEqual([]);
  };
  await vi.waitFor(goneOut, { timeout: 30_000 });
  // Its event makes no row, and nothing outside of the database is told of it.
  await http().post(`${v1}/change-orders/${orderId}/link`).send({ expiresInDays: 30, clientEmail: null }).expect(200);
}

/** What everything was before anyone tampered: rows by table, and the bytes of every file. */
let tables: string[];
const files = new Map<string, Buffer>();

async function keepAll(): Promise<void> {
  const { rows } = await intruder.query<{ name: string }>(
    `select tablename as name from pg_tables where schemaname = 'public' and tablename <> '_prisma_migrations'`,
  );
  tables = rows.map(({ name }) => name);
  await intruder.query('create schema kept');
  for (const name of tables) await intruder.query(`create table kept.${name} as table public.${name}`);
  for await (const key of api.platform.fileStore.keys()) files.set(key, await api.platform.fileStore.bytes(key));
}

async function putBack(): Promise<void> {
  await intruder.query(`truncate ${tables.map((name) => `public.${name}`).join(', ')}`);
  for (const name of tables) await intruder.query(`insert into public.${name} select * from kept.${name}`);
  for (const [key, bytes] of files) await api.platform.fileStore.put(key, bytes);
}

const sql = (text: string, ...values: unknown[]) => intruder.query(text, values);
const inProject = (text: string, ...values: unknown[]) => intruder.query(text, [job.project.id, ...values]);
const inOrder = (text: string, ...values: unknown[]) => intruder.query(text, [orderId, ...values]);
const sha256 = (text: string) => createHash('sha256').update(text).digest('hex');

async function cutEvents(count: number): Promise<void> {
  await inProject(
    'delete from event where project_id = $1 and seq > (select max(seq) from event where project_id = $1) - $2',
    count,
  );
  await inProject(
    `update record_head h set seq = e.seq, hash = e.hash from event e
     where h.project_id = $1 and e.project_id = $1 and e.seq = (select max(seq) from event where project_id = $1)`,
  );
}

/** Every event again, with bodies of one's own and hashes that fit. */
async function rewriteChain(edit: (body: string) => string): Promise<void> {
  const { rows } = await inProject('select seq, body from event where project_id = $1 order by seq');
  let before = '0'.repeat(64);
  for (const { seq, body } of rows) {
    const next = edit(body);
    const hash = chainHash(before, next);
    await inProject(
      'update event set body = $3, prev_hash = $4, hash = $5 where project_id = $1 and seq = $2',
      seq,
      next,
      before,
      hash,
    );
    before = hash;
  }
  await inProject('update record_head set hash = $2 where project_id = $1', before);
}

async function editDocument(edit: (text: string) => string): Promise<string> {
  const { rows } = await inOrder('select document from change_order_version where change_order_id = $1');
  const document = edit(rows[0].document);
  await inOrder('update change_order_version set document = $2 where change_order_id = $1', document);
  return document;
}
const dearer = (text: string) => {
  const document = JSON.parse(text);
  return canonicalJson({ ...document, price: { ...document.price, totalCents: document.price.totalCents + 100_000 } });
};

const fileKeys = async () =>
  (await sql('select id, file_key as key from photo order by id')).rows.map(({ key }) => key as string) as [
    string,
    string,
  ];
async function swapFiles(one: string, other: string): Promise<void> {
  const { fileStore } = api.platform;
  const [first, second] = [await fileStore.bytes(one), await fileStore.bytes(other)];
  await fileStore.put(one, second);
  await fileStore.put(other, first);
}
const removeProject = async () => {
  for (const name of tables.filter((one) => one !== 'project')) {
    const { rowCount } = await sql(
      `select 1 from information_schema.columns where table_schema = 'public' and table_name = $1 and column_name = 'project_id'`,
      name,
    );
    if (rowCount) await sql(`delete from ${name} where project_id = $1`, job.project.id);
  }
  await sql('delete from project where id = $1', job.project.id);
};
const forgetHeads = async () => {
  const { fileStore } = api.platform;
  for await (const key of fileStore.keys(headsFolder)) await fileStore.remove(key);
};
const takeOutApproval = async () => {
  const { rows } = await inProject(
    `select min(seq) as seq from event where project_id = $1 and type = 'change-order.decided'`,
  );
  const { rows: all } = await inProject('select count(*)::int as count from event where project_id = $1');
  await inOrder('delete from decision where change_order_id = $1');
  await inOrder(`update change_order set state = 'sent', decided_at = null where id = $1`);
  await inOrder(
    `update change_order set total_cents = (select (document::jsonb #>> '{price,totalCents}')::int from change_order_version
     where change_order_id = $1), days = (select (document::jsonb ->> 'days')::int from change_order_version
     where change_order_id = $1) where id = $1`,
  );
  await inProject(`update finding set state = 'offered' where project_id = $1 and state in ('approved', 'declined')`);
  await cutEvents(all[0].count - rows[0].seq + 1);
};

type Tampering = [name: string, tamper: () => Promise<unknown>, found: RegExp];

const tamperings: Record<string, Tampering[]> = {
  'the chain': [
    [
      'the body of an event',
      () => inProject(`update event set body = replace(body, 'Ana', 'Eva') where project_id = $1 and seq = 3`),
      /hash of event 3/,
    ],
    [
      'a body with its hash made to fit',
      async () => {
        const { rows } = await inProject('select body, prev_hash from event where project_id = $1 and seq = 3');
        const body = rows[0].body.replace('Ana', 'Eva');
        await inProject(
          'update event set body = $2, hash = $3 where project_id = $1 and seq = 3',
          body,
          chainHash(rows[0].prev_hash, body),
        );
      },
      /Event 4 does not continue/,
    ],
    [
      'the last event gone, the head left',
      () =>
        inProject(
          'delete from event where project_id = $1 and seq = (select max(seq) from event where project_id = $1)',
        ),
      /should end with/,
    ],
    ['the last two gone and the head set back', () => cutEvents(2), /head kept in the file store knows event/],
    ['the last five gone and the head set back', () => cutEvents(5), /head kept in the file store knows event/],
    [
      'one in the middle gone',
      () => inProject('delete from event where project_id = $1 and seq = 4'),
      /Event 4 is missing/,
    ],
    [
      'two swapped',
      async () => {
        await inProject('update event set seq = 10000 where project_id = $1 and seq = 3');
        await inProject('update event set seq = 3 where project_id = $1 and seq = 4');
        await inProject('update event set seq = 4 where project_id = $1 and seq = 10000');
      },
      /Event 3 is filed under another seq/,
    ],
    ['all events gone', () => inProject('delete from event where project_id = $1'), /should end with/],
    [
      'the head gone',
      () => inProject('delete from record_head where project_id = $1'),
      /head of the record is missing/,
    ],
    [
      'the whole chain written anew',
      () => rewriteChain((body) => body.replace('Framing', 'Trusses')),
      /record is not the one that version 1/,
    ],
    [
      'the client’s approval erased, with all that followed',
      takeOutApproval,
      /head kept in the file store knows event/,
    ],
    ['a whole project gone', removeProject, /Project .* is gone/],
  ],
  money: [
    [
      'a payment raised',
      () => inProject('update contract_entry set cents = cents * 2 where project_id = $1'),
      /entry of the contract .* its cents is not/i,
    ],
    [
      'the payments gone',
      () => inProject('delete from contract_entry where project_id = $1'),
      /Entry of the contract .* is gone/,
    ],
    [
      'a payment that nobody entered',
      () =>
        inProject(
          `insert into contract_entry (company_id, id, project_id, kind, name, happened_on, cents, entered_at, entered_by_id)
      select company_id, $2, project_id, kind, 'Roof', happened_on, cents, entered_at, entered_by_id from contract_entry where project_id = $1`,
          newId(),
        ),
      /does not know entry of the contract/,
    ],
    [
      'the taking back of a payment undone',
      () => inProject('update contract_entry set taken_back_at = null, taken_back_why = null where project_id = $1'),
      /its takenBackAt is not/,
    ],
    [
      'the retainage',
      () => inProject('update contract_terms set retainage_pct = 2 where project_id = $1'),
      /its retainagePct is not/,
    ],
    [
      'the original sum of the contract',
      () => inProject('update project set original_sum_cents = original_sum_cents + 1 where id = $1'),
      /its originalSumCents is not/,
    ],
    [
      'the total of an approved change order',
      () => inOrder('update change_order set total_cents = total_cents + 1 where id = $1'),
      /its totalCents is not/,
    ],
    [
      'the days of an approved change order',
      () => inOrder('update change_order set days = days + 1 where id = $1'),
      /its days is not/,
    ],
    [
      'the state of an approved change order',
      () => inOrder(`update change_order set state = 'declined' where id = $1`),
      /its state is not/,
    ],
    [
      'a version of the cost book',
      () =>
        sql(
          `update cost_book set book = jsonb_set(book, '{wagePerHourCents}', '1') where company_id = $1`,
          job.owner.companyId,
        ),
      /of the cost book was changed/,
    ],
    [
      'a version of the cost book gone',
      () => sql('delete from cost_book where company_id = $1', job.owner.companyId),
      /of the cost book is gone/,
    ],
  ],
  'what was sent and answered': [
    ['the price in a sent document', () => editDocument(dearer), /document of version 1 .* was changed/],
    [
      'a sent document with its hash made to fit',
      async () =>
        inOrder(
          'update change_order_version set sha256 = $2 where change_order_id = $1',
          sha256(await editDocument(dearer)),
        ),
      /Sent version .* its sha256 is not/,
    ],
    [
      'a sent document gone',
      () => inOrder('delete from change_order_version where change_order_id = $1'),
      /Sent version .* is gone/,
    ],
    ['the decision gone', () => inOrder('delete from decision where change_order_id = $1'), /Decision .* is gone/],
    [
      'the decision turned round',
      () => inOrder(`update decision set kind = 'declined' where change_order_id = $1`),
      /its kind is not/,
    ],
    [
      'another choice',
      () => inOrder(`update decision set finding_ids = '{}' where change_order_id = $1`),
      /its findingIds is not/,
    ],
    [
      'another signer',
      () => inOrder(`update decision set signer_name = 'Otto Wren' where change_order_id = $1`),
      /its signerName is not/,
    ],
    [
      'the signer’s browser',
      () => inOrder(`update decision set user_agent = 'Something else' where change_order_id = $1`),
      /its userAgentSha256 is not/,
    ],
    [
      'the words of the consent',
      () => inOrder(`update decision set consent_text = 'I agree to all.' where change_order_id = $1`),
      /its consentSha256 is not/,
    ],
    [
      'the day of a notice',
      () => inProject(`update notice set sent_on = sent_on - 3 where project_id = $1`),
      /its sentOn is not/,
    ],
    [
      'the words of a notice',
      () => inProject(`update notice set text = 'All is well.' where project_id = $1`),
      /its textSha256 is not/,
    ],
    ['the notices gone', () => inProject('delete from notice where project_id = $1'), /Notice .* is gone/],
    [
      'the text of a question',
      () => inOrder(`update question set text = 'Fine by me.' where change_order_id = $1`),
      /its text is not/,
    ],
    ['a question gone', () => inOrder('delete from question where change_order_id = $1'), /Question .* is gone/],
    [
      'the answer to a question',
      () => inOrder(`update question set answer = 'One day.' where change_order_id = $1`),
      /its answer is not/,
    ],
  ],
  'what was seen': [
    ['the verdict of a judgment', () => sql(`update judgment set verdict = 'meets'`), /Judgment .* its sha256 is not/],
    [
      'what was measured',
      () => sql(`update judgment set inputs = jsonb_set(inputs, '{cutIn}', '0.5')`),
      /Judgment .* its sha256 is not/,
    ],
    ['a judgment gone', () => sql('delete from judgment'), /Judgment .* is gone/],
    [
      'title and note of a finding',
      () => inProject(`update finding set title = 'Scratched plate', note = 'Nothing' where project_id = $1`),
      /its title is not/,
    ],
    [
      'the state of a finding',
      () => inProject(`update finding set state = 'proven' where project_id = $1`),
      /its state is not/,
    ],
    [
      'the severity of a finding',
      () => inProject(`update finding set severity = 'record' where project_id = $1`),
      /its severity is not/,
    ],
    [
      'where a finding is drawn',
      () => inProject(`update finding set extent = jsonb_set(extent, '{xIn}', '9') where project_id = $1`),
      /its extent is not/,
    ],
    [
      'the price of a finding',
      () => inProject(`update finding set estimate = null where project_id = $1`),
      /its estimate is not/,
    ],
    [
      'the caption of a photo',
      () => inProject(`update photo set caption = 'Before we came' where project_id = $1`),
      /its caption is not/,
    ],
    [
      'the link of a photo to its finding',
      () => sql('delete from finding_photo'),
      /Link of finding and photo .* is gone/,
    ],
    [
      'the size of a wall',
      () => inProject('update location set width_in = 90 where project_id = $1'),
      /its widthIn is not/,
    ],
  ],
  pictures: [
    [
      'a byte of an original',
      async () => {
        const [key] = await fileKeys();
        const bytes = await api.platform.fileStore.bytes(key);
        bytes.writeUInt8(bytes.readUInt8(100) ^ 1, 100);
        await api.platform.fileStore.put(key, bytes);
      },
      /its file has hash/,
    ],
    ['two originals swapped', async () => swapFiles(...(await fileKeys())), /its file has hash/],
    [
      'two originals swapped with the hashes of their rows',
      async () => {
        await swapFiles(...(await fileKeys()));
        // No two photos of a project may have one hash, not even for a moment.
        await inProject('update photo set sha256 = id::text where project_id = $1');
        await inProject(
          `update photo p set sha256 = o.sha256 from kept.photo o where p.project_id = $1 and o.id <> p.id`,
        );
      },
      /Photo .* its sha256 is not/,
    ],
    [
      'the file of an original gone',
      async () => api.platform.fileStore.remove((await fileKeys())[0]),
      /its file is missing/,
    ],
    ['the row of a photo gone', () => sql('delete from photo where id = $1', photoIds[0]), /Photo .* is gone/],
    [
      'two views swapped',
      async () => swapFiles(...((await fileKeys()).map(viewKey) as [string, string])),
      /its view has hash/,
    ],
    [
      'two views swapped with the hashes of their rows',
      async () => {
        await swapFiles(...((await fileKeys()).map(viewKey) as [string, string]));
        await inProject(
          `update photo p set view_sha256 = o.view_sha256 from kept.photo o where p.project_id = $1 and o.id <> p.id`,
        );
      },
      /its viewSha256 is not/,
    ],
    [
      'all views gone',
      async () => {
        for (const key of await fileKeys()) await api.platform.fileStore.remove(viewKey(key));
      },
      /its view is missing/,
    ],
    [
      'all views gone, and that there were any',
      () => inProject('update photo set view_sha256 = null where project_id = $1'),
      /its viewSha256 is not/,
    ],
  ],
  'whole companies': [
    [
      'the record of the company gone',
      async () => {
        await sql('delete from event where project_id = company_id');
        await sql('delete from record_head where project_id = company_id');
      },
      /head kept in the file store knows event/,
    ],
    [
      'a company gone with all it had',
      async () => {
        for (const name of tables) await sql(`delete from ${name}`);
      },
      /a witness knows its event/,
    ],
    [
      'a record whose project is gone',
      () => sql('delete from project where id = $1', job.project.id),
      /There is a record of project/,
    ],
  ],
};

let foundCount = 0;
afterAll(() => {
  console.log(`Tamperings found: ${foundCount} of ${Object.values(tamperings).flat().length}.`);
});

describe.each(Object.entries(tamperings))('tampering with %s', (_group, list) => {
  test.each(list)('%s is found', async (_name, tamper, found) => {
    await tamper();
    try {
      const { faults } = await verifyEverything(api.platform);
      expect(faults.map(({ where, what }) => `${where}: ${what}`).join('\n')).toMatch(found);
      foundCount++;
    } finally {
      await putBack();
    }
  });
});

describe('the end of a record', () => {
  /** What a letter or a backup says of it. */
  const headOf = async () => {
    const { rows } = await inProject('select seq, hash from record_head where project_id = $1');
    return { recordId: job.project.id, seq: rows[0].seq as number, hash: rows[0].hash as string };
  };

  test('cut and set back is found by whoever brings what a letter printed', async () => {
    const letter = await headOf();
    expect((await verifyEverything(api.platform, [letter])).faults).toEqual([]);
    await cutEvents(1);
    const { faults } = await verifyEverything(api.platform, [letter]);
    expect(faults.map(({ what }) => what)).toEqual([
      expect.stringMatching(/^event \d+: The record ends with event \d+, but the witness handed in knows event/),
    ]);
    await putBack();
  });

  test('whose events made no rows, and of which nobody knows, is not found, and that is said', async () => {
    await cutEvents(1);
    await forgetHeads();
    const { faults, ...counts } = await verifyEverything(api.platform);
    expect(faults).toEqual([]);
    expect(sayCompared(counts, 0)).toContain('Ends: no witness, so the removed end of a record would not show.');
    await putBack();
  });

  test('is said to be known up to the newest witness, never to be whole', async () => {
    const { faults, ...counts } = await verifyEverything(api.platform);
    expect(sayCompared(counts, faults.length)).toMatch(
      /^Compared 1 project of 1 company, \d+ events, \d+ rows .* Not compared: people .* Ends: \d+ witnesses agree; what came after the newest witness of a record could be removed unseen\. No fault in what was compared\.$/,
    );
  });

  test('of a record nobody has is a fault of its own', async () => {
    const strange = { recordId: newId(), seq: 3, hash: '0'.repeat(64) };
    const { faults } = await verifyEverything(api.platform, [strange]);
    expect(faults).toEqual([
      { where: `record ${strange.recordId}`, what: expect.stringContaining('there is no such') },
    ]);
  });
});

describe('what is compared', () => {
  test('names every column of every table that is replayed, or says why it is left', async () => {
    for (const table of tableNames) {
      const { key, compared, left } = tableOf(table);
      const { rows } = await sql(
        `select column_name as name from information_schema.columns where table_schema = 'public' and table_name = $1`,
        table,
      );
      const columns = rows.map(({ name }) =>
        name.replace(/_([a-z0-9])/g, (_all: string, letter: string) => letter.toUpperCase()),
      );
      const named = new Set(['companyId', ...key, ...compared, ...Object.keys(left)]);
      expect({ table, forgotten: columns.filter((column) => !named.has(column)) }).toEqual({ table, forgotten: [] });
    }
  });

  test('leaves out no kind of event that the story has', async () => {
    const { otherKinds, untold } = await verifyEverything(api.platform);
    expect([...otherKinds]).toEqual([]);
    expect([...untold]).toEqual([]);
  });
});
