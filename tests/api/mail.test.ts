import type { ChangeOrder, ClientLetter, Mail, RecordEvent, Todo } from '@underlath/contract';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { newId } from '../../apps/api/src/platform/ids.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type MailServer, startMailServer } from '../support/mail-server.ts';
import { attachmentOf, mailFile, mailsGone, mailsOfKind } from '../support/mails.ts';
import { type Job, type OpenLetter, type Sent, startJob } from '../support/offers.ts';
import { readPdf } from '../support/pdf-text.ts';
import { v1 } from '../support/site.ts';

let api: TestApi;
let job: Job;

const company = () => job.owner.companyId;
const inCompany: TestApi['platform']['database']['inCompany'] = (companyId, work) =>
  api.platform.database.inCompany(companyId, work);
const orderOf = async ({ id }: Pick<ChangeOrder, 'id'>): Promise<ChangeOrder> =>
  (await api.http(job.owner).get(`${v1}/change-orders/${id}`).expect(200)).body;
const todoOf = async (): Promise<Todo[]> =>
  (await api.http(job.owner).get(`${v1}/projects/${job.project.id}/overview`).expect(200)).body.todo;
const eventsOf = async (subjectId: string, type: string): Promise<RecordEvent[]> => {
  const path = `${v1}/projects/${job.project.id}/record?limit=200`;
  const { items } = (await api.http(job.owner).get(path).expect(200)).body as { items: RecordEvent[] };
  return items.filter((event) => event.subjectId === subjectId && event.type === type);
};
const again = (order: Pick<ChangeOrder, 'id'>, mail: Pick<Mail, 'id'>, body: object = {}) =>
  api
    .http(job.owner)
    .post(`${v1}/change-orders/${order.id}/mails/${mail.id}/again`)
    .set('idempotency-key', newId())
    .send(body);
const renew = (order: Pick<ChangeOrder, 'id'>, body: object = {}) =>
  api.http(job.owner).post(`${v1}/change-orders/${order.id}/link`).send(body);

async function offer(body: object = {}): Promise<Sent & { open: OpenLetter; letter: ClientLetter }> {
  const finding = await job.priced();
  const sent = await job.send(await job.draft([finding.id], { days: 3 }), body);
  const open = await job.open(sent.link);
  const letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body as ClientLetter;
  return { ...sent, open, letter };
}
/** The newest mail of a kind about a change order, once it is out, and its file. */
async function mailed(order: Pick<ChangeOrder, 'id'>, kind: Mail['kind']): Promise<{ mail: Mail; file: string }> {
  await mailsGone(api, company());
  const mail = (await orderOf(order)).mails.find((one) => one.kind === kind);
  if (!mail) throw new Error(`no mail of kind ${kind}`);
  return { mail, file: mailFile(api, mail.id) };
}

describe('without a mail server', () => {
  beforeAll(async () => {
    api = await startTestApi();
    job = await startJob(api);
    await inCompany(company(), (tx) =>
      tx.company.update({
        where: { id: company() },
        data: { name: 'Brandt & Søn Remodel', email: 'office@brandt.example', phone: '555 0117' },
      }),
    );
  });
  afterAll(() => api.close());

  test('a letter bears the company’s name, is answered to the company, and gives the reason before the price', async () => {
    const { changeOrder, link, letter } = await offer();
    const { mail, file } = await mailed(changeOrder, 'offer');
    expect(mail).toMatchObject({ to: 'ines@wren.example', state: 'filed', version: 1, tries: 1 });
    expect(mail.serverWords).toContain('nobody was mailed');
    expect(file).toMatch(/^From: .*Brandt.*<no-reply@localhost>$/m);
    expect(file).toMatch(/^Reply-To: .*<office@brandt\.example>$/m);
    expect(file).toContain('<html lang="es-US">');
    expect(file).toContain(link);
    const { headline, why } = letter.document.wording;
    const order = [
      'Hola Ines Wren:',
      headline.es,
      why.es,
      'El precio es de $',
      link,
      'Guarde este correo',
      letter.sha256,
    ];
    const places = order.map((words) => file.indexOf(words));
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(file).not.toMatch(/\d{4}-\d\d-\d\dT/);
  });

  test('without an address of the company an answer goes to the person who sent it', async () => {
    await inCompany(company(), (tx) => tx.company.update({ where: { id: company() }, data: { email: null } }));
    const { changeOrder } = await offer();
    const { file } = await mailed(changeOrder, 'offer');
    expect(file).toContain(`<${job.owner.email}>`);
    await inCompany(company(), (tx) =>
      tx.company.update({ where: { id: company() }, data: { email: 'office@brandt.example' } }),
    );
  });

  test('a renewed link is mailed, moves the day the letter names, and its secret leaves the row once it is out', async () => {
    const { changeOrder, letter } = await offer({ expiresInDays: 5 });
    const renewed = (await renew(changeOrder, { expiresInDays: 30 }).expect(200)).body;
    expect(renewed.mailedTo).toBe('ines@wren.example');
    const { mail, file } = await mailed(changeOrder, 'link-renewed');
    expect(file).toContain(renewed.link);
    expect(file).toContain('El enlace anterior ya no funciona');
    const rows = await mailsOfKind(api, company(), 'linkRenewed');
    expect(rows.find(({ id }) => id === mail.id)?.text).not.toContain(renewed.link);
    const open = await job.open(renewed.link);
    const now = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body as ClientLetter;
    expect(now.answerBy).toBe(renewed.expiresAt);
    expect(now.document.expiresAt).toBe(letter.document.expiresAt);
    const pdf = await api
      .http()
      .get(`${open.path}/pdf?locale=en`)
      .set('cookie', open.cookie)
      .responseType('blob')
      .expect(200);
    const day = new Date(renewed.expiresAt).toLocaleDateString('en-US', { dateStyle: 'long', timeZone: 'UTC' });
    expect((await readPdf(pdf.body)).text).toContain(day);
    const first = (await orderOf(changeOrder)).mails.find(({ kind }) => kind === 'offer');
    expect(first?.replacedAt).not.toBeNull();
  });

  test('a link that was handed over is renewed without a mail, unless an address is given', async () => {
    const { changeOrder } = await offer({ clientEmail: null });
    expect((await renew(changeOrder).expect(200)).body.mailedTo).toBeNull();
    expect((await orderOf(changeOrder)).mails).toEqual([]);
    expect((await renew(changeOrder, { clientEmail: 'wren@post.example' }).expect(200)).body.mailedTo).toBe(
      'wren@post.example',
    );
    expect((await orderOf(changeOrder)).mails).toMatchObject([{ kind: 'link-renewed', to: 'wren@post.example' }]);
  });

  test('a question reaches the office, its answer the client in their language with the way back and no link', async () => {
    const { changeOrder, open, link } = await offer();
    const question = { version: 1, name: 'Ines Wren', text: '¿Habrá polvo?' };
    const asked = await api.http().post(`${open.path}/questions`).set('cookie', open.cookie).send(question).expect(201);
    const office = await mailed(changeOrder, 'question-asked');
    expect(office.mail.to).toBe(job.owner.email);
    expect(office.file).toContain('¿Habrá polvo?');
    expect(office.file).toContain(`/projects/${job.project.id}/change-orders/${changeOrder.id}`);
    const path = `${v1}/change-orders/${changeOrder.id}/questions/${asked.body.id}/answer`;
    await api.http(job.owner).post(path).send({ answer: 'Muy poco; sellamos la puerta.' }).expect(200);
    const { mail, file } = await mailed(changeOrder, 'question-answered');
    expect(mail.to).toBe('ines@wren.example');
    for (const words of [
      'Ines Wren preguntó',
      '¿Habrá polvo?',
      'Ana Brandt responde:',
      'Muy poco; sellamos la puerta.',
    ])
      expect(file).toContain(words);
    expect(file).toContain('use el enlace de nuestro correo del');
    expect(file).not.toContain('..');
    expect(file).not.toContain(link);
  });

  test('an answer goes to both sides; the signer’s copy is in the language of the answer and carries the decided PDF', async () => {
    const { changeOrder, open, letter } = await offer();
    expect(
      (await job.decide(open, letter, { locale: 'en', signerName: 'Otto Wren', nameConfirmed: true })).status,
    ).toBe(200);
    const office = await mailed(changeOrder, 'decision-told');
    const copy = await mailed(changeOrder, 'decision-copy');
    expect([office.mail.to, copy.mail.to]).toEqual([job.owner.email, 'ines@wren.example']);
    for (const { file } of [office, copy]) {
      expect(file).toContain('was approved by Otto Wren on');
      expect(file.indexOf('Otto Wren')).toBeLessThan(file.indexOf(letter.sha256));
      expect(file).toContain(`Project record: ${job.project.id}:`);
      expect(file).not.toMatch(/\d{4}-\d\d-\d\dT/);
    }
    expect(office.file).not.toContain('application/pdf');
    expect(copy.file).toContain('Content-Type: application/pdf; name=change-order-');
    expect(attachmentOf(api, copy.mail.id).subarray(0, 5).toString()).toBe('%PDF-');
  });

  test('the record says once that a mail went to a file, with its id and the hash of its text', async () => {
    const { changeOrder } = await offer();
    const { mail } = await mailed(changeOrder, 'offer');
    const events = await eventsOf(changeOrder.id, 'mail.filed');
    expect(events).toMatchObject([
      { actor: { kind: 'system' }, data: { mailId: mail.id, kind: 'offer', to: 'ines@wren.example' } },
    ]);
    expect(events[0]?.data.textSha256).toMatch(/^[0-9a-f]{64}$/);
  });

  test('sending an offer again whose secret is gone makes a new link until the same day, and ends the old one', async () => {
    const { changeOrder, open } = await offer({ expiresInDays: 9 });
    const { mail } = await mailed(changeOrder, 'offer');
    expect(mail.renewsLink).toBe(true);
    const before = (await orderOf(changeOrder)).versions[0]?.linkExpiresAt;
    const next = (await again(changeOrder, mail, { to: 'ines@new.example' }).expect(201)).body as Mail;
    expect(next).toMatchObject({ kind: 'link-renewed', to: 'ines@new.example' });
    await api.http().get(open.path).set('cookie', open.cookie).expect(410);
    expect((await orderOf(changeOrder)).versions[0]?.linkExpiresAt).toBe(before);
    await again(changeOrder, mail).expect(409);
    const { file } = await mailed(changeOrder, 'link-renewed');
    expect(file).toContain('To: ines@new.example');
    expect(await eventsOf(changeOrder.id, 'mail.sent-again')).toMatchObject([
      { data: { mailId: mail.id, to: 'ines@new.example' } },
    ]);
  });

  test('a mail of another change order, and of another company, is not there', async () => {
    const { changeOrder } = await offer();
    const { mail } = await mailed(changeOrder, 'offer');
    await again(await offer().then((other) => other.changeOrder), mail).expect(404);
    const stranger = await api.signIn();
    await api.http(stranger).post(`${v1}/change-orders/${changeOrder.id}/mails/${mail.id}/again`).send({}).expect(404);
  });
});

describe('with a mail server', () => {
  let post: MailServer;
  beforeAll(async () => {
    post = await startMailServer();
    api = await startTestApi({ config: { smtpUrl: post.url } });
    job = await startJob(api);
  });
  afterAll(async () => {
    await api.close();
    await post.close();
  });
  const stateOf = async (order: Pick<ChangeOrder, 'id'>) => (await orderOf(order)).mails[0];

  test('what it says is kept, and the letter bears the company’s name at the configured address', async () => {
    const { changeOrder } = await offer();
    const { mail } = await mailedOver(changeOrder);
    expect(mail).toMatchObject({ state: 'handed-over', serverWords: '250 2.0.0 kept as number 7' });
    expect(post.taken.at(-1)).toMatch(/^From: Brandt Remodel <letters@mailroom\.example>$/m);

    async function mailedOver(order: Pick<ChangeOrder, 'id'>) {
      await mailsGone(api, company());
      return { mail: (await orderOf(order)).mails[0] };
    }
  });

  test('the record says once that a mail was handed over, with its id and the hash of its text', async () => {
    const { changeOrder } = await offer();
    await mailsGone(api, company());
    const mail = await stateOf(changeOrder);
    expect(await eventsOf(changeOrder.id, 'mail.handed-over')).toMatchObject([
      { data: { mailId: mail?.id, textSha256: expect.stringMatching(/^[0-9a-f]{64}$/) } },
    ]);
  });

  test('a letter refused for good is tried once, is told in the to-do, and goes out again with the same link', async () => {
    post.answer = '550 5.1.1 no such box';
    post.offered = 0;
    const { changeOrder, link, open } = await offer();
    await expect.poll(async () => (await stateOf(changeOrder))?.state, { timeout: 20_000 }).toBe('refused');
    const refused = await stateOf(changeOrder);
    expect(refused).toMatchObject({ tries: 1, serverWords: '550 5.1.1 no such box', renewsLink: false });
    expect(post.offered).toBe(1);
    expect((await todoOf()).filter(({ kind }) => kind === 'mail-failed')).toMatchObject([
      {
        changeOrderId: changeOrder.id,
        title: 'ines@wren.example',
        where: `Change order ${changeOrder.number}: 550 5.1.1 no such box`,
      },
    ]);
    expect(await eventsOf(changeOrder.id, 'mail.refused')).toHaveLength(1);

    post.answer = '250 2.1.5 will do';
    await again(changeOrder, refused as Mail, { to: 'ines@right.example' }).expect(201);
    await mailsGone(api, company());
    expect(await stateOf(changeOrder)).toMatchObject({ kind: 'offer', to: 'ines@right.example', state: 'handed-over' });
    expect(post.taken.at(-1)).toContain(link.slice(-20));
    await api.http().get(open.path).set('cookie', open.cookie).expect(200);
    expect((await todoOf()).filter(({ kind }) => kind === 'mail-failed')).toEqual([]);
  });

  test('a mail server that is busy is asked again; only the end of it is in the record', async () => {
    post.answer = '451 4.7.1 later please';
    const { changeOrder } = await offer();
    await expect.poll(async () => (await stateOf(changeOrder))?.tries, { timeout: 20_000 }).toBe(1);
    const waiting = (await stateOf(changeOrder)) as Mail;
    expect(waiting).toMatchObject({ state: 'waiting' });
    expect(waiting.serverWords).toContain('451 4.7.1 later please');
    await again(changeOrder, waiting).expect(409);
    const { mailSender } = api.deps.services;
    await expect(mailSender.send(company(), waiting.id, false)).rejects.toThrow('451');
    expect(await eventsOf(changeOrder.id, 'mail.given-up')).toEqual([]);
    await expect(mailSender.send(company(), waiting.id, true)).rejects.toThrow('451');
    expect(await stateOf(changeOrder)).toMatchObject({ state: 'given-up', tries: 3 });
    expect(await eventsOf(changeOrder.id, 'mail.given-up')).toHaveLength(1);
    post.answer = '250 2.1.5 will do';
  });

  test('a failed mail about an offer that was taken back or answered is no longer to do', async () => {
    post.answer = '550 5.1.1 no such box';
    const { changeOrder, open, letter } = await offer();
    await expect.poll(async () => (await stateOf(changeOrder))?.state, { timeout: 20_000 }).toBe('refused');
    const mine = async () =>
      (await todoOf()).filter((one) => one.kind === 'mail-failed' && one.changeOrderId === changeOrder.id);
    expect(await mine()).toHaveLength(1);
    post.answer = '250 2.1.5 will do';
    await job.decide(open, letter);
    await mailsGone(api, company());
    expect(await mine()).toEqual([]);
  });

  test('a sign-in that the mail server refuses says nothing about the letter, which waits', async () => {
    post.answer = '530 5.7.0 sign in first';
    const { changeOrder } = await offer();
    await expect.poll(async () => (await stateOf(changeOrder))?.tries, { timeout: 20_000 }).toBe(1);
    expect(await stateOf(changeOrder)).toMatchObject({ state: 'waiting' });
    post.answer = '250 2.1.5 will do';
  });
});
