/** The real server in class mode under the built page, with a tutor and a class; its clock can be set ahead. */
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface, type Interface } from 'node:readline';
import type { ApiRoute } from '../../../shared/api-route.ts';
import { openStore, type Store, storeFile } from '../../../src/store/index.ts';
import { builtProgram } from '../../support/built.ts';

export interface Somebody {
  readonly id: string;
  readonly name: string;
  readonly token: string;
}

interface Seeded {
  readonly address: string;
  readonly classId: string;
  readonly tutor: Somebody;
  readonly learners: readonly Somebody[];
}

interface Running {
  readonly child: ChildProcessWithoutNullStreams;
  readonly lines: Interface;
  readonly first: unknown;
}

const PROGRAM = 'tests/browser/support/homework-child.ts';

async function run(args: readonly string[]): Promise<Running> {
  const child = spawn(process.execPath, [await builtProgram(PROGRAM), ...args]);
  let complaint = '';
  child.stderr.on('data', (piece) => {
    complaint += String(piece);
  });
  const lines = createInterface({ input: child.stdout });
  const first = await Promise.race([
    once(lines, 'line').then(([line]) => JSON.parse(String(line)) as unknown),
    once(child, 'exit').then(([code]) => {
      throw new Error(`The server ended with code ${code}: ${complaint}`);
    }),
  ]);
  return { child, lines, first };
}

export class HomeworkServer {
  readonly address: string;
  readonly classId: string;
  readonly tutor: Somebody;
  readonly learners: readonly Somebody[];
  private readonly folder: string;
  private readonly data: string;
  private running: Running;

  private constructor(folder: string, data: string, running: Running) {
    const { address, classId, tutor, learners } = running.first as Seeded;
    this.address = address;
    this.classId = classId;
    this.tutor = tutor;
    this.learners = learners;
    this.folder = folder;
    this.data = data;
    this.running = running;
  }

  static async begin(folder: string, names: readonly string[]): Promise<HomeworkServer> {
    const data = mkdtempSync(join(tmpdir(), 'polewise-homework-'));
    return new HomeworkServer(folder, data, await run([folder, data, '0', names.join('|')]));
  }

  /** Sets its clock so far ahead of the machine's. */
  async ahead(milliseconds: number): Promise<void> {
    const set = once(this.running.lines, 'line');
    this.running.child.stdin.write(`ahead ${milliseconds}\n`);
    await set;
  }

  /** Ends it as a power cut would. */
  async kill(): Promise<void> {
    const { child } = this.running;
    if (child.exitCode !== null || child.signalCode !== null) return;
    const gone = once(child, 'exit');
    child.kill('SIGKILL');
    await gone;
  }

  /** Starts it again on the same port and data, with the machine's clock. */
  async start(): Promise<void> {
    this.running = await run([this.folder, this.data, new URL(this.address).port]);
  }

  async end(): Promise<void> {
    await this.kill();
    rmSync(this.data, { recursive: true, force: true });
  }

  /** What is kept, as somebody sees who has the disk. */
  async look<T>(at: (store: Store) => Promise<T>): Promise<T> {
    const store = await openStore({ kind: 'file', file: storeFile(this.data) });
    try {
      return await at(store);
    } finally {
      await store.close();
    }
  }

  /** Asks a route as somebody who is signed in. */
  async ask(
    { token }: Somebody,
    { method, path }: ApiRoute,
    params: Readonly<Record<string, string>> = {},
    body?: unknown,
  ): Promise<unknown> {
    const filled = path.replace(/:(\w+)/g, (_, name: string) => params[name] ?? '');
    const response = await fetch(`${this.address}${filled}`, {
      method,
      headers: {
        cookie: `polewise_session=${token}`,
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const value: unknown = await response.json();
    if (!response.ok) throw new Error(JSON.stringify(value));
    return value;
  }

  /** With it in a browser somebody is signed in there. */
  cookieOf({ token }: Somebody) {
    const [name, sameSite] = ['polewise_session', 'Strict'] as const;
    return { name, value: token, url: this.address, httpOnly: true, sameSite };
  }
}
