// The real server for the bench, in a process of its own on the database in DATABASE_URL: no rate limits, nothing seeded.
import { readConfig } from '../../apps/api/src/config.ts';
import { noLimits } from '../../apps/api/src/plugins/limits.ts';
import { startServer } from '../../apps/api/src/server.ts';

const server = await startServer({
  config: readConfig({
    ...process.env,
    PORT: '0',
    SEED: 'none',
    WORKER: 'none',
    SIGN_UP: 'open',
    MAIL_PER_HOUR: '100000',
  }),
  limits: noLimits,
  logger: false,
  log: () => {},
});
process.send?.(server.url.replace('localhost', '127.0.0.1'));
process.on('message', (asked) => {
  if (asked === 'cpu') process.send?.(process.cpuUsage());
  else void server.close().then(() => process.exit(0));
});
