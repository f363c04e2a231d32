import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { createServer, type LogLevel, shownFirstRunKey } from '../../server/index.ts';
import type { Store, StoreFailure, StorePlace } from '../../store/index.ts';
import type { CommandWords } from '../../words/commands.ts';
import { say } from '../../words/statement.ts';
import { coreWordsOf } from '../core-words.ts';
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

async function listen(
  app: Server,
  host: string,
  port: number,
  { serve: said }: CommandWords,
): Promise<string> {
  try {
    await app.listen({ host, port });
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'EADDRINUSE') throw new UsageError(said.portTaken.wrong(port), said.portTaken.right(port));
    if (code === 'EACCES') throw new UsageError(said.portForbidden.wrong(port), said.portForbidden.right);
    if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
      throw new UsageError(said.noSuchHost.wrong(host), said.noSuchHost.right);
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
  io.out(io.words.serve.firstRun({ address, key }));
  io.out(io.words.serve.firstRunKey);
}

export const readPort = (text: string, io: Io): number =>
  wholeNumber(io, '--port', text, { low: 0, high: 65_535, example: 8024 });

/** Serves until it is stopped. */
export async function serve(options: ServeOptions, io: Io): Promise<void> {
  const { serve: said } = io.words;
  const port = readPort(options.port, io);
  const reach = reachOf(options, io.words);
  const { bank } = await openCourse(io, options.banks);
  const words = await coreWordsOf(io);
  const folder = join(dirname(ownBanks(io)), 'dist', 'web');
  const use = async (store: Store, place: StorePlace): Promise<void> => {
    const app = await createServer({
      store,
      bank,
      words,
      folder,
      version: ownVersion(),
      ...reach,
      log: { level: options.log, stream: process.stderr },
    });
    try {
      const stopped = untilStopped();
      const address = await listen(app, options.host, port, io.words);
      io.out(said.ready(address));
      io.out(place.kind === 'file' ? said.keptInFile(place.file) : said.keptInDatabase);
      if (reach.class) await tellFirstRun(store, reach.class.address ?? address, io);
      if (!existsSync(join(folder, 'index.html'))) io.out(said.noPage);
      io.out(said.stopWith);
      await stopped;
    } finally {
      await close(app);
    }
    io.out(said.stopped);
  };
  const onAway = ({ said: what, detail }: StoreFailure): void =>
    io.err(said.waiting({ told: say(io.words.kept.failures.wrong, what), detail }));
  await withNewStore(io, options.data, use, { onAway });
}
