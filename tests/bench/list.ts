import autocannon from 'autocannon';
import { v7 } from 'uuid';
import { anotherCopy, noiseJpeg } from './pictures.ts';
import { inTurns, type Row } from './table.ts';
import { sendPhoto, uploadBody, type Visitor } from './visitor.ts';

const seconds = 4;

/** A list of 50 findings with photos over HTTP: against pg, hand-written SQL and JSON.stringify in a bare route. */
export async function list(visitor: Visitor, floorUrl: string): Promise<Row> {
  await fill(visitor);
  const path = `/projects/${visitor.projectId}/findings`;
  const result = await inTurns(
    5,
    () => requestsASecond(`${visitor.url}/api/v1${path}`, { cookie: visitor.cookie }),
    () => requestsASecond(floorUrl + path, {}),
  );
  return { work: 'list of 50 findings', ...result, unit: 'requests/s', goal: 0.5 };
}

async function fill(visitor: Visitor): Promise<void> {
  const picture = await noiseJpeg(640, 480);
  for (let index = 0; index < 50; index++) {
    const send = () => sendPhoto(visitor, uploadBody(anotherCopy(picture)));
    const photoIds = [await send(), await send()];
    await visitor.post(`/projects/${visitor.projectId}/findings`, {
      id: v7(),
      locationId: visitor.locationId,
      checkId: 'anchor.thread-engagement',
      seenAt: new Date().toISOString(),
      photoIds,
      inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: -(index % 5) / 16, rule: 'flush' },
    });
  }
}

async function requestsASecond(url: string, headers: Record<string, string>): Promise<number> {
  const result = await autocannon({ url, headers, connections: 10, duration: seconds });
  if (result.non2xx > 0 || result.errors > 0)
    throw new Error(`${url}: ${result.non2xx} bad answers, ${result.errors} errors`);
  return result.requests.average;
}
