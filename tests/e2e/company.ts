import { expect, type Page } from '@playwright/test';
import { demo } from './demo.ts';
import { linkIn } from './mail-folder.ts';

/** A company of its own with one wall, so that the demo stays as the other tests know it. */
export interface Site {
  api: string;
  projectId: string;
  wallId: string;
  /** Posts as the owner and answers what was made. */
  // biome-ignore lint/suspicious/noExplicitAny: the answers are checked where they are used
  make: (path: string, data: object) => Promise<any>;
  /** A top plate cut too deep; answers its id. */
  cutPlate: (title: string, extent?: object) => Promise<string>;
}

/** Its owner has confirmed their address, unless told otherwise. */
export async function openCompany(page: Page, { isConfirmed = true } = {}): Promise<Site> {
  const api = `${demo().url}/api/v1`;
  const make: Site['make'] = async (path, data) => {
    const answer = await page.request.post(api + path, { headers: { origin: demo().url }, data });
    expect(answer.status(), path).toBe(201);
    return answer.json();
  };
  const email = `odile-${Date.now()}@plumb.example`;
  await make('/companies', {
    companyName: 'Plumb & Tenon',
    name: 'Odile Marsh',
    email,
    password: 'a long enough phrase for one',
  });
  if (isConfirmed) {
    const token = (await linkIn(email, 'confirm-email')).split('#')[1];
    const confirmed = await page.request.post(`${api}/account/confirm`, {
      headers: { origin: demo().url },
      data: { token },
    });
    expect(confirmed.status()).toBe(200);
  }
  const { id: projectId } = await make('/projects', {
    name: 'Wren cottage',
    siteAddress: '2 Mortise Row, Fernmoor',
    clientName: 'Ines Wren',
    originalSumCents: 8_400_000,
    originalDays: 60,
    codeEdition: 'irc-2021',
    jurisdiction: 'Fernmoor',
    stories: 2,
    yearBuilt: 1962,
  });
  const { id: wallId } = await make(`/projects/${projectId}/locations`, {
    ...{ kind: 'wall', name: 'North wall', widthIn: 144, heightIn: 97.125, framingSpacingIn: 16 },
  });
  const cutPlate: Site['cutPlate'] = async (title, extent) =>
    (
      await make(`/projects/${projectId}/findings`, {
        locationId: wallId,
        checkId: 'cut.top-plate',
        title,
        ...(extent && { extent }),
        seenAt: '2026-03-03T17:05:00Z',
        inputs: { widthIn: 3.5, cutIn: 2, code: 'irc', bearingOrBraced: true, inShearWall: false },
      })
    ).id;
  return { api, projectId, wallId, make, cutPlate };
}
