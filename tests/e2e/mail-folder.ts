import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from '@playwright/test';
import { demo } from './demo.ts';

/**
 * The link of the newest letter to somebody that leads to that page; the mail folder is what a firm without a mail server has.
 * Letters are written a moment after they are asked for: `letters` says how many must lie there, so that an older one isn't taken.
 */
export async function linkIn(to: string, page: string, letters = 1): Promise<string> {
  const find = () => {
    const folder = join(demo().dataDir, 'mail');
    const links = readdirSync(folder)
      .sort()
      .map((name) => readFileSync(join(folder, name), 'utf8').replace(/=\n/g, ''))
      .filter((letter) => letter.includes(`To: ${to}`))
      .flatMap((letter) => new RegExp(`/${page}#([\\w-]{43})`).exec(letter)?.[1] ?? []);
    return links.length < letters ? '' : links.at(-1);
  };
  await expect.poll(find).not.toBe('');
  return `/${page}#${find()}`;
}
