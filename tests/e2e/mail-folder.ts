import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from '@playwright/test';
import { demo } from './demo.ts';

/** The link of the newest letter to somebody that leads to that page; the mail folder is what a firm without a mail server has. */
export async function linkIn(to: string, page: string): Promise<string> {
  const find = () => {
    const folder = join(demo().dataDir, 'mail');
    const letters = readdirSync(folder)
      .sort()
      .map((name) => readFileSync(join(folder, name), 'utf8').replace(/=\n/g, ''))
      .filter((letter) => letter.includes(`To: ${to}`));
    return letters.map((letter) => new RegExp(`/${page}#([\\w-]{43})`).exec(letter)?.[1]).findLast(Boolean) ?? '';
  };
  await expect.poll(find).not.toBe('');
  return `/${page}#${find()}`;
}
