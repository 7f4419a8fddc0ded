import { randomBytes } from 'node:crypto';
import { v7 } from 'uuid';

/** Someone signed in to the bench's server, with one project and one wall. */
export interface Visitor {
  url: string;
  cookie: string;
  projectId: string;
  locationId: string;
  post<T>(path: string, body: unknown): Promise<T>;
}

export async function arrive(url: string): Promise<Visitor> {
  const response = await fetch(`${url}/api/v1/companies`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      companyName: 'Bench Carpentry',
      name: 'Bea Bench',
      email: `bea-${randomBytes(4).toString('hex')}@example.test`,
      password: 'seventeen studs and a plate',
    }),
  });
  if (!response.ok) throw new Error(`the bench could not open a company: ${await response.text()}`);
  const cookie = response.headers
    .getSetCookie()
    .map((one) => one.split(';')[0])
    .join('; ');
  const post = async <T>(path: string, body: unknown): Promise<T> => {
    const answer = await fetch(`${url}/api/v1${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie },
      body: JSON.stringify(body),
    });
    if (!answer.ok) throw new Error(`${path} answered ${answer.status}: ${await answer.text()}`);
    return (await answer.json()) as T;
  };
  const project = await post<{ id: string }>('/projects', {
    id: v7(),
    name: 'Bench house',
    siteAddress: '1 Bench Lane',
    clientName: 'Someone invented',
    stories: 2,
    originalSumCents: 10_000_000,
    originalDays: 60,
    codeEdition: 'irc-2021',
    jurisdiction: 'Invented County',
  });
  const place = await post<{ id: string }>(`/projects/${project.id}/locations`, {
    kind: 'wall',
    name: 'East wall',
    widthIn: 180,
    heightIn: 108,
    framingSpacingIn: 16,
  });
  return { url, cookie, projectId: project.id, locationId: place.id, post };
}

const boundary = 'underlath-bench-boundary';
const opening = Buffer.from(
  `--${boundary}\r\ncontent-disposition: form-data; name="stage"\r\n\r\nfound\r\n` +
    `--${boundary}\r\ncontent-disposition: form-data; name="file"; filename="photo.jpg"\r\ncontent-type: image/jpeg\r\n\r\n`,
);
const closing = Buffer.from(`\r\n--${boundary}--\r\n`);

/** The body of an upload, made before the clock starts: what the phone's own encoding costs is not the server's. */
export const uploadBody = (bytes: Uint8Array): Buffer => Buffer.concat([opening, bytes, closing]);

export async function sendPhoto(visitor: Visitor, body: Buffer): Promise<string> {
  const answer = await fetch(`${visitor.url}/api/v1/projects/${visitor.projectId}/photos`, {
    method: 'POST',
    headers: { cookie: visitor.cookie, 'content-type': `multipart/form-data; boundary=${boundary}` },
    body: new Uint8Array(body),
  });
  if (!answer.ok) throw new Error(`the photo was answered ${answer.status}: ${await answer.text()}`);
  return ((await answer.json()) as { id: string }).id;
}
