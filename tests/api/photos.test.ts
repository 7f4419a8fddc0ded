import { createHash, randomBytes } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { request as httpRequest } from 'node:http';
import { join } from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { fixture, type Site, someId, startSite, upload, v1 } from '../support/site.ts';

let api: TestApi;
let site: Site;

beforeAll(async () => {
  api = await startTestApi();
  site = await startSite(api);
});
afterAll(() => api.close());

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const get = (path: string, person: Person = site.crew, headers: Record<string, string> = {}) =>
  fetch(`${api.url}${v1}${path}`, { headers: { cookie: person.cookie, ...headers } });
const bytesOf = async (path: string, person?: Person) => Buffer.from(await (await get(path, person)).arrayBuffer());

/** A JPEG no other test has: its color is its own. */
const ownJpeg = (width = 60) => {
  const [r = 0, g = 0, b = 0] = randomBytes(3);
  return sharp({ create: { width, height: 40, channels: 3, background: { r, g, b } } })
    .jpeg()
    .toBuffer();
};

async function countPhotos(): Promise<number> {
  return (await api.http(site.crew).get(`${v1}/projects/${site.project.id}/photos`).query({ limit: 200 })).body.items
    .length;
}
const filesLeft = () => readdirSync(join(api.dataDir, 'files', 'incoming'));

describe('a photo from a phone', () => {
  const original = fixture('sideways-with-gps.jpg');

  test('is stored untouched, with the size it has when upright and the time its camera told', async () => {
    const id = someId();
    const { status, body } = await site.upload(original, {
      id,
      sha256: sha256(original),
      caption: 'Cut plate',
      stage: 'opened',
    });
    expect(status).toBe(201);
    expect(body).toMatchObject({
      id,
      duplicate: false,
      sha256: sha256(original),
      byteCount: original.byteLength,
      mediaType: 'image/jpeg',
      widthPx: 1800,
      heightPx: 2400,
      deviceTime: '2026-03-03T14:05:09',
      deviceOffset: '-08:00',
      stage: 'opened',
      caption: 'Cut plate',
      uploadedBy: { id: site.crew.memberId, name: 'Cleo Birch' },
      derivative: { state: 'waiting', reason: null },
    });
    expect(sha256(await bytesOf(`/photos/${id}/original`, site.estimator))).toBe(sha256(original));
  });

  test('is shown upright, smaller, and without camera, time or place', async () => {
    const { body } = await site.upload(original);
    expect((await site.derived(body.id)).derivative).toEqual({ state: 'ready', reason: null });
    for (const [size, width, height] of [
      ['view', 1200, 1600],
      ['thumb', 240, 320],
    ] as const) {
      const meta = await sharp(await bytesOf(`/photos/${body.id}/${size}`)).metadata();
      expect([meta.format, meta.width, meta.height]).toEqual(['jpeg', width, height]);
      expect([meta.exif, meta.xmp, meta.iptc, meta.orientation]).toEqual([undefined, undefined, undefined, undefined]);
    }
  });

  test('is handed out for its own user only, by a tag that saves sending it again', async () => {
    const { body } = await site.upload(original);
    await site.derived(body.id);
    const view = await get(`/photos/${body.id}/view`);
    await view.arrayBuffer();
    expect(view.headers.get('content-type')).toBe('image/jpeg');
    expect(view.headers.get('cache-control')).toBe('private, no-cache');
    expect(view.headers.get('x-content-type-options')).toBe('nosniff');
    const again = await get(`/photos/${body.id}/view`, site.crew, { 'if-none-match': view.headers.get('etag') ?? '' });
    expect([again.status, await again.text()]).toEqual([304, '']);
    const download = await get(`/photos/${body.id}/original`, site.owner);
    await download.arrayBuffer();
    expect(download.headers.get('content-disposition')).toBe(`attachment; filename="photo-${body.id}.jpg"`);
    expect(download.headers.get('content-type')).toBe('application/octet-stream');
    expect(download.headers.get('etag')).toBe(`"${sha256(original)}"`);
  });

  test('without a zone in it keeps its zone unknown, and without a time its time', async () => {
    const noZone = await site.upload(fixture('no-zone.jpg'));
    expect(noZone.body).toMatchObject({ deviceTime: '2026-03-04T09:00:00', deviceOffset: null });
    const noTime = await site.upload(await ownJpeg());
    expect(noTime.body).toMatchObject({ deviceTime: null, deviceOffset: null });
  });

  test.each([
    ['plain.png', 'image/png', 300, 400],
    ['plain.webp', 'image/webp', 600, 800],
    ['drawn.heic', 'image/heic', 480, 320],
  ])('%s is taken and shown', async (name, mediaType, widthPx, heightPx) => {
    const { status, body } = await site.upload(fixture(name));
    expect([status, body.mediaType, body.widthPx, body.heightPx]).toEqual([201, mediaType, widthPx, heightPx]);
    expect((await site.derived(body.id)).derivative.state).toBe('ready');
    expect((await sharp(await bytesOf(`/photos/${body.id}/thumb`)).metadata()).format).toBe('jpeg');
  });
});

describe('the same photo again', () => {
  test('answers the one that is there, and links it to the finding asked for', async () => {
    const bytes = await ownJpeg();
    const first = await site.upload(bytes);
    const finding = await site.finding();
    const again = await site.upload(bytes, { id: someId(), findingId: finding.id });
    expect([again.status, again.body.id, again.body.duplicate]).toEqual([200, first.body.id, true]);
    expect(again.body.findingIds).toEqual([finding.id]);
  });

  test('fifty times at once is one photo', async () => {
    const bytes = await ownJpeg();
    const before = await countPhotos();
    const answers = await Promise.all(Array.from({ length: 50 }, () => site.upload(bytes, { id: someId() })));
    expect(answers.filter(({ status }) => status === 201)).toHaveLength(1);
    expect(answers.filter(({ status }) => status === 200)).toHaveLength(49);
    expect(new Set(answers.map(({ body }) => body.id)).size).toBe(1);
    expect(await countPhotos()).toBe(before + 1);
    // The smaller pictures pass through the same folder while they are made.
    await site.derived(answers[0]?.body.id ?? '');
    expect(filesLeft()).toEqual([]);
  });

  test('under an id that stands for other bytes is refused', async () => {
    const id = someId();
    await site.upload(await ownJpeg(), { id });
    const { status, body } = await site.upload(await ownJpeg(), { id });
    expect([status, body.type]).toEqual([409, 'urn:underlath:problem:already-exists']);
  });

  test('in another project is another photo', async () => {
    const bytes = await ownJpeg();
    await site.upload(bytes);
    const other = await startSite(api);
    expect((await other.upload(bytes)).status).toBe(201);
  });
});

describe('a file that lies', () => {
  test.each([
    ['text under a photo name', Buffer.from('Dear reader, this is no photo at all.\n'.repeat(20)), 415],
    ['SVG', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'), 415],
    ['nothing at all', Buffer.alloc(0), 415],
    ['the head of a JPEG and nothing more', Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16]), 415],
  ])('%s is refused by its bytes', async (_name, bytes, expected) => {
    const { status, body } = await site.upload(bytes);
    expect([status, body.type]).toEqual([expected, 'urn:underlath:problem:unsupported-media']);
    expect(body.detail).toMatch(/photo/i);
  });

  test.each(['gif', 'tiff'] as const)('%s is refused', async (format) => {
    const bytes = await sharp({ create: { width: 8, height: 8, channels: 3, background: '#333' } })
      .toFormat(format)
      .toBuffer();
    expect((await site.upload(bytes)).status).toBe(415);
  });

  test('a PNG of 16,000 by 16,000 pixels in a few kilobytes is refused before it is decoded', async () => {
    const bomb = pngOfOneColor(16_000);
    expect(bomb.byteLength).toBeLessThan(40_000);
    const { status, body } = await site.upload(bomb);
    expect([status, body.type]).toEqual([413, 'urn:underlath:problem:too-large']);
    expect(body.detail).toContain('16000 x 16000');
  });

  test('a hash that is not the one of the bytes is refused and tells both', async () => {
    const bytes = await ownJpeg();
    const told = sha256(Buffer.from('other'));
    const { status, body } = await site.upload(bytes, { sha256: told });
    expect([status, body.errors[0]?.pointer]).toEqual([422, '/sha256']);
    expect(body.detail).toContain(told);
    expect(body.detail).toContain(sha256(bytes));
  });

  test('a truncated JPEG is kept, and what could not be made of it is told, also when it is tried again', async () => {
    const whole = fixture('sideways-with-gps.jpg');
    const { status, body } = await site.upload(whole.subarray(0, Math.floor(whole.byteLength * 0.6)));
    expect(status).toBe(201);
    expect((await site.derived(body.id)).derivative).toEqual({
      state: 'failed',
      reason: 'the file ends before the picture does',
    });
    const view = await get(`/photos/${body.id}/view`);
    expect(view.status).toBe(409);
    expect(((await view.json()) as { detail: string }).detail).toContain('the file ends before the picture does');
    const todo = (await api.http(site.crew).get(`${v1}/projects/${site.project.id}/overview`)).body.todo;
    expect(todo).toContainEqual(expect.objectContaining({ kind: 'photo-failed' }));
    const again = await api.http(site.crew).post(`${v1}/photos/${body.id}/derive`);
    expect([again.status, again.body.derivative.state]).toEqual([202, 'waiting']);
    expect((await site.derived(body.id)).derivative.state).toBe('failed');
  });

  test('of 25 MB and one byte is refused and leaves nothing', async () => {
    const before = await countPhotos();
    const bytes = Buffer.concat([await ownJpeg(), Buffer.alloc(25 * 1024 * 1024)]);
    const { status, body } = await site.upload(bytes);
    expect([status, body.type]).toEqual([413, 'urn:underlath:problem:too-large']);
    expect(await countPhotos()).toBe(before);
    expect(filesLeft()).toEqual([]);
  });
});

describe('an upload that is not one', () => {
  test('as JSON is 415', async () => {
    const answer = await api.http(site.crew).post(`${v1}/projects/${site.project.id}/photos`).send({ file: 'x' });
    expect([answer.status, answer.body.type]).toEqual([415, 'urn:underlath:problem:unsupported-media']);
  });

  test.each([
    ['an unknown stage', { stage: 'finished' }, '/stage'],
    ['an unreadable id', { id: 'photo-1' }, '/id'],
    ['an unknown field', { color: 'red' }, '/color'],
    ['a finding that is not there', { findingId: someId() }, '/findingId'],
    ['a place that is not there', { locationId: someId() }, '/locationId'],
  ])('%s is named by its pointer', async (_name, fields, pointer) => {
    const { status, body } = await site.upload(await ownJpeg(), fields as unknown as Record<string, string>);
    expect([status, body.errors?.[0]?.pointer], body.detail).toEqual([422, pointer]);
    expect(filesLeft()).toEqual([]);
  });

  test('without a file, and with the fields behind it, says so', async () => {
    const send = async (form: FormData) => {
      const headers = { cookie: site.crew.cookie };
      const answer = await fetch(`${api.url}${v1}/projects/${site.project.id}/photos`, {
        method: 'POST',
        headers,
        body: form,
      });
      return { status: answer.status, body: (await answer.json()) as { errors: { pointer: string }[] } };
    };
    const empty = new FormData();
    empty.append('caption', 'nothing else');
    expect((await send(empty)).body.errors[0]?.pointer).toBe('/file');
    const late = new FormData();
    late.append('file', new Blob([new Uint8Array(await ownJpeg())]), 'a.jpg');
    late.append('caption', 'too late');
    expect((await send(late)).body.errors[0]?.pointer).toBe('/caption');
    expect(filesLeft()).toEqual([]);
  });

  test('into a project of another company is 404, as into one that is nowhere', async () => {
    const stranger = await api.signIn();
    for (const projectId of [site.project.id, someId()]) {
      expect((await upload(api, stranger, projectId, await ownJpeg())).status).toBe(404);
    }
  });

  const partOf = (name: string, more = '') => `--cut\r\nContent-Disposition: form-data; name="${name}"${more}\r\n`;
  const filePart = partOf('file', '; filename="a.jpg"\r\nContent-Type: image/jpeg');
  test.each([
    ['inside the file', `${filePart}\r\nhalf a pict`],
    ['inside a header', filePart.slice(0, -30)],
    ['inside a field', `${partOf('caption')}\r\nhalf a wo`],
    ['after a field', `${partOf('caption')}\r\nwords\r\n--cut\r\n`],
    ['before any part', 'no boundary at all'],
  ])('that ends too soon, %s, is a 400 that says so, and leaves nothing', async (_where, body) => {
    const { status, problem } = await sendWhole(body, 'multipart/form-data; boundary=cut');
    expect([status, problem.type]).toEqual([400, 'urn:underlath:problem:malformed-request']);
    expect(problem.detail).toContain('cut off');
    expect(filesLeft()).toEqual([]);
  });

  test('without a boundary is refused as not readable', async () => {
    expect((await sendWhole('whatever', 'multipart/form-data')).status).toBeLessThan(500);
  });

  test('cut off in the middle leaves neither a row nor bytes', async () => {
    const before = await countPhotos();
    const whole = fixture('sideways-with-gps.jpg');
    await sendHalf(whole);
    await expect.poll(filesLeft).toEqual([]);
    expect(await countPhotos()).toBe(before);
  });
});

describe('a photo in order', () => {
  test('changes its caption, stage and place, never its bytes, and only from the version seen', async () => {
    const { body } = await site.upload(await ownJpeg());
    const patch = (version: number | undefined, change: object) => {
      const request = api.http(site.crew).patch(`${v1}/photos/${body.id}`);
      return (version === undefined ? request : request.set('if-match', `"${version}"`)).send(change);
    };
    const change = { caption: 'North plate', stage: 'before-cover', locationId: site.wall.id };
    const changed = await patch(1, change);
    expect(changed.body).toMatchObject({ ...change, version: 2, sha256: body.sha256 });
    expect((await patch(1, { caption: 'x' })).status).toBe(412);
    expect((await patch(undefined, { caption: 'x' })).status).toBe(428);
    expect((await patch(2, { sha256: 'x' })).body.errors[0].pointer).toBe('/sha256');
    expect((await patch(2, { locationId: someId() })).body.errors[0].pointer).toBe('/locationId');
  });

  test('is found by finding, stage and place, page by page without gaps or repeats', async () => {
    const own = await startSite(api);
    const finding = await own.finding();
    for (let made = 0; made < 5; made++) {
      await own.upload(
        await ownJpeg(),
        made < 3 ? { findingId: finding.id } : { stage: 'during', locationId: own.wall.id },
      );
    }
    const list = (query: object) => api.http(own.crew).get(`${v1}/projects/${own.project.id}/photos`).query(query);
    expect((await list({ findingId: finding.id })).body.items).toHaveLength(3);
    expect((await list({ stage: 'during' })).body.items).toHaveLength(2);
    expect((await list({ locationId: own.wall.id })).body.items).toHaveLength(2);
    const all = (await list({})).body.items.map(({ id }: { id: string }) => id);
    const paged: string[] = [];
    for (let cursor: string | null = ''; cursor !== null; ) {
      const { body }: { body: { items: { id: string }[]; next: string | null } } = await list({
        limit: 2,
        ...(cursor && { cursor }),
      });
      paged.push(...body.items.map(({ id }) => id));
      cursor = body.next;
    }
    expect(paged).toEqual(all);
    expect((await list({ cursor: 'made-up' })).body.errors[0].pointer).toBe('query/cursor');
  });
});

/** Sends just these bytes over a real socket, complete as HTTP, and waits for the answer. */
async function sendWhole(body: string, type: string): Promise<{ status: number; problem: Record<string, string> }> {
  const answer = await fetch(`${api.url}${v1}/projects/${site.project.id}/photos`, {
    method: 'POST',
    headers: { cookie: site.crew.cookie, 'content-type': type },
    body: Buffer.from(body),
  });
  return { status: answer.status, problem: (await answer.json()) as Record<string, string> };
}

/** Promises more than it sends, then hangs up. */
async function sendHalf(bytes: Buffer): Promise<void> {
  const head =
    '--cut\r\nContent-Disposition: form-data; name="file"; filename="a.jpg"\r\nContent-Type: image/jpeg\r\n\r\n';
  await new Promise<void>((done) => {
    const request = httpRequest(`${api.url}${v1}/projects/${site.project.id}/photos`, {
      method: 'POST',
      headers: {
        cookie: site.crew.cookie,
        'content-type': 'multipart/form-data; boundary=cut',
        'content-length': head.length + bytes.byteLength + 20,
      },
    });
    request.on('error', () => done());
    request.write(head);
    request.write(bytes.subarray(0, Math.floor(bytes.byteLength / 2)));
    // The server has begun to write when a partial file is there; only then is the line cut.
    const timer = setInterval(() => {
      if (filesLeft().length === 0) return;
      clearInterval(timer);
      request.destroy(new Error('cut'));
    }, 5);
  });
}

/** One bit a pixel and one color: huge in pixels, tiny in bytes. */
function pngOfOneColor(sidePx: number): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(data.length);
    check.writeUInt32BE(crc32(body));
    return Buffer.concat([length, body, check]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(sidePx, 0);
  header.writeUInt32BE(sidePx, 4);
  header[8] = 1;
  const rows = deflateSync(Buffer.alloc(sidePx * (1 + sidePx / 8)), { level: 9 });
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([signature, chunk('IHDR', header), chunk('IDAT', rows), chunk('IEND', Buffer.alloc(0))]);
}
