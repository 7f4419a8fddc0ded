import { mkdirSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createTransport, type SendMailOptions } from 'nodemailer';
import type { Config } from '../../config.ts';
import { toHtml } from './mail-html.ts';

export interface Attachment {
  filename: string;
  contentType: string;
  content: Buffer;
}

export interface Letter {
  /** Id of the outbox row; becomes the Message-ID, so a letter sent twice after a crash is one letter to the reader's program. */
  id: string;
  to: string;
  subject: string;
  text: string;
  locale: string;
  /** Whose name it bears; null: that of the configured sender. */
  fromName: string | null;
  replyTo: string | null;
  attachments?: readonly Attachment[];
}

export interface SentMail {
  /** Filed: written to a file, and nobody was mailed. */
  state: 'handedOver' | 'filed';
  /** What the mail server said. */
  words: string;
}

/** Carries a letter out of the house. Services do not call it: they leave letters in the outbox. */
export interface Mailer {
  /** @throws MailRefusedError when the mail server will never take this letter */
  send(letter: Letter): Promise<SentMail>;
}

/** A mail server refused this letter for good (RFC 5321, 4.2.1: a reply of 5yz); sending the same again is no use. */
export class MailRefusedError extends Error {
  override readonly name = 'MailRefusedError';
}

/** Waits of the mail program, milliseconds. The library's own go up to ten minutes. */
const waits = { connectionTimeout: 15_000, greetingTimeout: 15_000, socketTimeout: 60_000 };

/**
 * SMTP where `SMTP_URL` names a server (`?from=` sets the sender's address); otherwise each letter becomes a file in
 * `dataDir`/mail and the log says which. The log never carries the text: links in it are secrets.
 */
export function createMailer(
  { smtpUrl, dataDir, publicUrl }: Pick<Config, 'smtpUrl' | 'dataDir' | 'publicUrl'>,
  log: (line: string) => void = console.log,
): Mailer {
  const host = new URL(publicUrl).hostname;
  const sender = readSender((smtpUrl && new URL(smtpUrl).searchParams.get('from')) || `Underlath <no-reply@${host}>`);
  const message = (letter: Letter): SendMailOptions => ({
    from: { ...sender, ...(letter.fromName && { name: letter.fromName }) },
    ...(letter.replyTo && { replyTo: { name: letter.fromName ?? sender.name, address: letter.replyTo } }),
    to: letter.to,
    subject: letter.subject,
    text: letter.text,
    html: toHtml(letter),
    attachments: [...(letter.attachments ?? [])],
    messageId: `<${letter.id}@${host}>`,
  });
  return smtpUrl ? smtpMailer(smtpUrl, message) : folderMailer(join(dataDir, 'mail'), message, log);
}

/** `Name <address>` or an address alone. */
function readSender(from: string): { name: string; address: string } {
  const [, name = '', address = from] = /^\s*"?(.*?)"?\s*<([^<>]+)>\s*$/.exec(from) ?? [];
  return { name, address: address.trim() };
}

function smtpMailer(smtpUrl: string, message: (letter: Letter) => SendMailOptions): Mailer {
  const { hostname, port, protocol, username, password } = new URL(smtpUrl);
  const secure = protocol === 'smtps:';
  const transport = createTransport({
    host: hostname,
    port: Number(port) || (secure ? 465 : 587),
    secure,
    ...(username && { auth: { user: decodeURIComponent(username), pass: decodeURIComponent(password) } }),
    ...waits,
  });
  return {
    send: async (letter) => {
      try {
        const { response } = await transport.sendMail(message(letter));
        return { state: 'handedOver', words: response };
      } catch (error) {
        throw isRefusal(error) ? new MailRefusedError(error.response ?? error.message, { cause: error }) : error;
      }
    },
  };
}

interface SmtpError extends Error {
  code?: string;
  responseCode?: number;
  response?: string;
}

/** 530 wants us to sign in (RFC 4954, 6): that is mended in our settings, and the letter goes out then. */
const AUTHENTICATION_REQUIRED = 530;

/** A 5yz to the sender, the reader or the text of this letter; one to the greeting or the sign-in says nothing about it. */
function isRefusal(error: unknown): error is SmtpError {
  const { code, responseCode = 0 } = error as SmtpError;
  return (
    (code === 'EENVELOPE' || code === 'EMESSAGE') && responseCode >= 500 && responseCode !== AUTHENTICATION_REQUIRED
  );
}

function folderMailer(
  folder: string,
  message: (letter: Letter) => SendMailOptions,
  log: (line: string) => void,
): Mailer {
  const transport = createTransport({ streamTransport: true, buffer: true, newline: 'unix' });
  return {
    send: async (letter) => {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      const sent = await transport.sendMail(message(letter));
      const file = join(folder, `${letter.id}.eml`);
      await writeFile(file, sent.message as Buffer, { mode: 0o600 });
      log(`Mail to ${letter.to}, "${letter.subject}", is in ${file}`);
      return { state: 'filed', words: 'No mail server is set up (SMTP_URL); nobody was mailed.' };
    },
  };
}
