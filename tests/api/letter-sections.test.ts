import type { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { type ClientLetter, type Finding, type Locale, lineWords } from '@underlath/contract';
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { LetterScreen } from '../../apps/dashboard/src/client/letter/letter-screen.tsx';
import { chosenIn } from '../../apps/dashboard/src/client/letter/letter-text.ts';
import { LocaleScope } from '../../apps/dashboard/src/shared/i18n/locale.tsx';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, type OpenLetter, type Sent, startJob } from '../support/offers.ts';
import { readPdf } from '../support/pdf-text.ts';
import { v1 } from '../support/site.ts';

let api: TestApi;
let job: Job;
let sent: Sent;
let letter: ClientLetter;
let stored: string;
let open: OpenLetter;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
  const plain = await job.priced();
  const ids = [plain.id, (await ofCheck('cut.top-plate', shearWall)).id, (await ofCheck('bearing.seat', offSeat)).id];
  sent = await job.send(await job.draft(ids), { byPart: true });
  open = await job.open(sent.link);
  letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body;
  stored = (await api.http(job.owner).get(`${v1}/change-orders/${sent.changeOrder.id}/versions/1`).expect(200)).text;
});
afterAll(() => api.close());

/** An engineer decides about it. */
const shearWall = { widthIn: 3.5, cutIn: 2, code: 'irc', bearingOrBraced: true, inShearWall: true };
/** It has to be made safe. */
const offSeat = { bearingLengthIn: 0, positiveConnection: false };

async function ofCheck(checkId: string, inputs: object): Promise<Finding> {
  const http = api.http(job.owner);
  const body = { locationId: job.wallId, checkId, title: `About ${checkId}`, seenAt: '2026-03-03T17:05:00Z', inputs };
  const made = (await http.post(`${v1}/projects/${job.project.id}/findings`).send(body).expect(201)).body as Finding;
  const { choices } = (await http.get(`${v1}/findings/${made.id}/estimate`).expect(200)).body;
  await http
    .put(`${v1}/findings/${made.id}/estimate`)
    .set('if-match', `"${made.version}"`)
    .send({ choices })
    .expect(200);
  return made;
}

const squeezed = (words: string) => words.replace(/\s+/g, ' ').trim();

/** What the client's page says, as it is read from top to end. */
function pageText(locale: Locale): string {
  const screen = createElement(LetterScreen, {
    ...{ letter, chosen: chosenIn(letter, []), leftOut: [], block: null },
    ...{ onLeaveOut: () => {}, onAskFor: () => {}, go: () => {}, onClosed: () => {} },
  });
  const inLocale = createElement(LocaleScope, { initial: locale, children: screen });
  const page = renderToStaticMarkup(createElement(QueryClientProvider, { client: new QueryClient() }, inLocale));
  const words = page
    .replace(/<[^>]+>/g, '')
    .replaceAll('&amp;', '&')
    .replaceAll('&#x27;', "'")
    .replaceAll('&quot;', '"');
  return squeezed(words);
}

async function pdfText(locale: Locale): Promise<string> {
  const answer = await api
    .http()
    .get(`${open.path}/pdf?locale=${locale}`)
    .set('cookie', open.cookie)
    .buffer(true)
    .parse((response, done) =>
      buffer(response as unknown as Readable).then(
        (bytes) => done(null, bytes),
        (error) => done(error, null),
      ),
    )
    .expect(200);
  return squeezed((await readPdf(answer.body as Buffer)).text);
}

describe('every sentence of every section', () => {
  const sentences = (locale: Locale) =>
    (letter.document.sections ?? []).flatMap(({ lines }) => [
      ...lines.map(({ words }) => words[locale]),
      ...lines.flatMap(({ term }) => (term ? [term[locale]] : [])),
    ]);

  test('is there to be looked for: what is unsafe, what an engineer decides, the parts and the sample rates', () => {
    expect(letter.document.sections?.map(({ id }) => id)).toEqual([
      'make-safe',
      'letter',
      'price',
      'parts',
      'not-known',
      'cautions',
      'words',
    ]);
    expect(sentences('en').join('\n')).toMatch(/Keep out of this place.*An engineer decides how to fix finding/s);
    expect(sentences('en').join('\n')).toContain('sample rates');
  });

  for (const locale of ['en', 'es'] as const) {
    test(`is on the page, in the PDF and in the hashed document, in ${locale}`, async () => {
      const [page, pdf, json] = [pageText(locale), await pdfText(locale), JSON.stringify(JSON.parse(stored))];
      for (const words of sentences(locale).map(squeezed)) {
        expect(page, 'page').toContain(words);
        expect(pdf, 'PDF').toContain(words);
        expect(json, 'document').toContain(JSON.stringify(words).slice(1, -1));
      }
    });
  }

  test('says what is unsafe before anything else, on the page and in the PDF', async () => {
    const [first] = letter.document.sections ?? [];
    const words = first?.lines[0] ? lineWords(first.lines[0], 'en') : '';
    for (const said of [pageText('en'), await pdfText('en')]) {
      expect(said.indexOf(words)).toBeGreaterThanOrEqual(0);
      expect(said.indexOf(words)).toBeLessThan(said.indexOf(letter.document.wording.headline.en));
    }
  });
});

test('a choice without a finding says nothing of what an engineer decides about it', () => {
  const engineer = letter.document.items.find(({ severity }) => severity === 'engineer');
  const { sections = [] } = chosenIn(letter, [engineer?.findingId ?? '']).letter.document;
  const said = JSON.stringify(sections);
  expect(said).not.toContain('An engineer decides how to fix');
  expect(said).toContain('Make safe now');
});

test('questions asked before a version was sent are frozen in it with their own days', async () => {
  const order = await job.draft([(await job.priced()).id]);
  const first = await job.send(order);
  const asking = await job.open(first.link);
  const asked = (
    await api
      .http()
      .post(`${asking.path}/questions`)
      .set('cookie', asking.cookie)
      .set('idempotency-key', 'a-question-of-the-first-version')
      .send({ version: 1, name: 'Ines Wren', text: 'Can it wait?' })
      .expect(201)
  ).body;
  const now = (await api.http(job.owner).get(`${v1}/change-orders/${order.id}`).expect(200)).body;
  const edited = await api
    .http(job.owner)
    .patch(`${v1}/change-orders/${order.id}`)
    .set('if-match', `"${now.version}"`)
    .send({ days: 5 })
    .expect(200);
  const { changeOrder } = await job.send(edited.body);
  expect(changeOrder.draft.questions).toEqual([
    { name: 'Ines Wren', text: 'Can it wait?', askedAt: asked.askedAt, answer: null, answeredAt: null },
  ]);
});
