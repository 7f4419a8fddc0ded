import type { AddressInfo } from 'node:net';
import { createServer, type Socket } from 'node:net';

/** A mail server of the tests: it speaks just enough SMTP (RFC 5321) to be handed a letter, and says what it is told to. */
export interface MailServer {
  /** For `SMTP_URL`, with a sender's address. */
  readonly url: string;
  /** The letters it took, as they came. */
  readonly taken: string[];
  /** How often a letter was offered to it. */
  offered: number;
  /** Its reply to the reader's address. */
  answer: string;
  close(): Promise<void>;
}

export async function startMailServer(answer = '250 2.1.5 will do'): Promise<MailServer> {
  const sockets = new Set<Socket>();
  const listener = createServer((socket) => {
    sockets.add(socket.on('close', () => sockets.delete(socket)));
    attend(socket, server);
  });
  await new Promise<void>((done) => listener.listen(0, '127.0.0.1', done));
  const { port } = listener.address() as AddressInfo;
  const server: MailServer = {
    url: `smtp://127.0.0.1:${port}?from=${encodeURIComponent('Mailroom <letters@mailroom.example>')}`,
    taken: [],
    offered: 0,
    answer,
    close: () => {
      for (const socket of sockets) socket.destroy();
      return new Promise((done) => listener.close(() => done()));
    },
  };
  return server;
}

function attend(socket: Socket, server: MailServer): void {
  let buffered = '';
  let isLetter = false;
  const say = (line: string) => socket.write(`${line}\r\n`);
  const reply = (line: string): void => {
    const verb = line.slice(0, 4).toUpperCase();
    if (verb === 'RCPT') {
      server.offered += 1;
      say(server.answer);
    } else if (verb === 'DATA') {
      isLetter = true;
      say('354 go on');
    } else if (verb === 'QUIT') socket.end('221 bye\r\n');
    else say('250 ok');
  };
  socket.on('error', () => {});
  socket.on('data', (chunk) => {
    buffered += chunk.toString('utf8');
    for (;;) {
      const end = isLetter ? '\r\n.\r\n' : '\r\n';
      const at = buffered.indexOf(end);
      if (at < 0) return;
      const came = buffered.slice(0, at);
      buffered = buffered.slice(at + end.length);
      if (isLetter) {
        isLetter = false;
        server.taken.push(came);
        say('250 2.0.0 kept as number 7');
      } else reply(came);
    }
  });
  say('220 mailroom.example');
}
