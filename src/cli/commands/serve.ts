import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { createServer, type LogLevel, shownFirstRunKey } from '../../server/index.ts';
import type { Store, StoreFailure, StorePlace } from '../../store/index.ts';
import { openCourse, ownBanks } from '../course.ts';
import { type Io, UsageError } from '../io.ts';
import { wholeNumber } from '../numbers.ts';
import { withNewStore } from '../store-place.ts';
import { untilStopped } from '../until-stopped.ts';
import { ownVersion } from '../version.ts';
import { type ReachOptions, reachOf } from './serve-reach.ts';

export interface ServeOptions extends ReachOptions {
  readonly port: string;
  readonly data?: string;
  readonly banks?: string;
  readonly log: LogLevel;
}

/** How long requests that have begun may take to finish when the server is stopped. */
const PATIENCE = 10_000;

type Server = Awaited<ReturnType<typeof createServer>>;

async function listen(app: Server, host: string, port: number): Promise<string> {
  try {
    await app.listen({ host, port });
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'EADDRINUSE')
      throw new UsageError(
        `Port ${port} is taken.`,
        `Perhaps polewise runs already: open http://localhost:${port}. Otherwise choose another with --port, or 0 for any.`,
      );
    if (code === 'EACCES') throw new UsageError(`Port ${port} may not be used.`, 'Choose one above 1023.');
    if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
      throw new UsageError(`This machine has no address ${host}.`, 'Leave out --host.');
    throw error;
  }
  const address = app.server.address();
  const bound = address && typeof address === 'object' ? address.port : port;
  return `http://${host.includes(':') ? `[${host}]` : host}:${bound}`;
}

async function close(app: Server): Promise<void> {
  const impatient = setTimeout(() => app.server.closeAllConnections(), PATIENCE);
  await app.close();
  clearTimeout(impatient);
}

/** As long as there is no administrator, whoever has the key can become it. */
async function tellFirstRun({ people }: Store, address: string, io: Io): Promise<void> {
  const key = await shownFirstRunKey(people);
  if (key === null) return;
  io.out(`There is no administrator yet. Open ${address} and give this key: ${key}`);
  io.out('Whoever has the key becomes the administrator; it is good for nothing afterwards.');
}

export const readPort = (text: string): number =>
  wholeNumber('--port', text, { low: 0, high: 65_535, example: 8024 });

/** Serves until it is stopped. */
export async function serve(options: ServeOptions, io: Io): Promise<void> {
  const port = readPort(options.port);
  const reach = reachOf(options);
  const { bank } = await openCourse(io, options.banks);
  const folder = join(dirname(ownBanks()), 'dist', 'web');
  const use = async (store: Store, place: StorePlace): Promise<void> => {
    const app = await createServer({
      store,
      bank,
      folder,
      version: ownVersion(),
      ...reach,
      log: { level: options.log, stream: process.stderr },
    });
    try {
      const stopped = untilStopped();
      const address = await listen(app, options.host, port);
      io.out(`Polewise is ready: ${address}`);
      io.out(
        place.kind === 'file' ? `Answers are kept in ${place.file}.` : 'Answers are kept in the database.',
      );
      if (reach.class) await tellFirstRun(store, reach.class.address ?? address, io);
      if (!existsSync(join(folder, 'index.html'))) io.out('The page has not been built: npm run build.');
      io.out('Stop with Ctrl-C.');
      await stopped;
    } finally {
      await close(app);
    }
    io.out('Stopped; every answer is kept.');
  };
  const onAway = ({ message, detail }: StoreFailure): void =>
    io.err(`${message} (${detail}) It is waited for; Ctrl-C ends that.`);
  await withNewStore(io, options.data, use, { onAway });
}
