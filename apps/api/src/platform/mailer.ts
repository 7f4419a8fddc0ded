import { mkdirSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createTransport } from 'nodemailer';
import type { Config } from '../config.ts';

export interface Letter {
  /** Id of the outbox row; becomes the Message-ID, so a letter sent twice after a crash is one letter to the reader's program. */
  id: string;
  to: string;
  subject: string;
  text: string;
}

/** Carries a letter out of the house. Services do not call it: they leave letters in the outbox. */
export interface Mailer {
  send(letter: Letter): Promise<void>;
}

/** Waits of the mail program, milliseconds. The library's own go up to ten minutes. */
const waits = { connectionTimeout: 15_000, greetingTimeout: 15_000, socketTimeout: 60_000 };

/**
 * SMTP where `SMTP_URL` names a server (`?from=` sets the sender); otherwise each letter becomes a file in
 * `dataDir`/mail and the log says which. The log never carries the text: links in it are secrets.
 */
export function createMailer(
  { smtpUrl, dataDir, publicUrl }: Pick<Config, 'smtpUrl' | 'dataDir' | 'publicUrl'>,
  log: (line: string) => void = console.log,
): Mailer {
  const host = new URL(publicUrl).hostname;
  const from = (smtpUrl && new URL(smtpUrl).searchParams.get('from')) || `Underlath <no-reply@${host}>`;
  const message = ({ id, to, subject, text }: Letter) => ({ from, to, subject, text, messageId: `<${id}@${host}>` });
  if (smtpUrl) {
    const { hostname, port, protocol, username, password } = new URL(smtpUrl);
    const secure = protocol === 'smtps:';
    const transport = createTransport({
      host: hostname,
      port: Number(port) || (secure ? 465 : 587),
      secure,
      ...(username && { auth: { user: decodeURIComponent(username), pass: decodeURIComponent(password) } }),
      ...waits,
    });
    return { send: async (letter) => void (await transport.sendMail(message(letter))) };
  }
  const folder = join(dataDir, 'mail');
  const transport = createTransport({ streamTransport: true, buffer: true, newline: 'unix' });
  return {
    send: async (letter) => {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      const sent = await transport.sendMail(message(letter));
      const file = join(folder, `${letter.id}.eml`);
      await writeFile(file, sent.message as Buffer, { mode: 0o600 });
      log(`Mail to ${letter.to}, "${letter.subject}", is in ${file}`);
    },
  };
}
