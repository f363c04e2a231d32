/** The real server under the built page; it can be killed and started again where it was. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AnswerPage } from '../../../shared/api.ts';
import { builtProgram } from '../../support/built.ts';

export interface PageServer {
  readonly address: string;
  /** Ids of the answers that are kept, in the order in which they arrived. */
  kept(): Promise<string[]>;
  /** Ends it as a power cut would. */
  kill(): Promise<void>;
  /** Starts it again on the same port and data. */
  start(): Promise<void>;
  /** Ends it, and with it its data. */
  end(): Promise<void>;
}

const PROGRAM = 'tests/browser/support/page-child.ts';

async function run(
  folder: string,
  data: string,
  port: string,
): Promise<{ child: ChildProcess; address: string }> {
  const child = spawn(process.execPath, [await builtProgram(PROGRAM), folder, data, port], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let printed = '';
  child.stderr.on('data', (piece) => {
    printed += String(piece);
  });
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout.on('data', (piece) => {
      printed += String(piece);
      const found = /ready: (http:\S+)/.exec(printed)?.[1];
      if (found) resolve(found);
    });
    child.once('exit', (code) => reject(new Error(`The server ended with code ${code}: ${printed}`)));
  });
  return { child, address };
}

/** Starts a server with an empty store. */
export async function pageServer(folder: string): Promise<PageServer> {
  const data = mkdtempSync(join(tmpdir(), 'polewise-browser-'));
  let { child, address } = await run(folder, data, '0');
  const { port } = new URL(address);
  const kill = async (): Promise<void> => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    const gone = once(child, 'exit');
    child.kill('SIGKILL');
    await gone;
  };
  return {
    address,
    async kept() {
      const ids: string[] = [];
      for (let after = 0; ; ) {
        const page = (await (await fetch(`${address}/api/answers?after=${after}`)).json()) as AnswerPage;
        for (const entry of page.answers) if (entry.kind === 'answer') ids.push(entry.answer.id);
        const last = page.answers.at(-1);
        if (!last) return ids;
        after = last.number;
      }
    },
    kill,
    async start() {
      ({ child, address } = await run(folder, data, port));
    },
    async end() {
      await kill();
      rmSync(data, { recursive: true, force: true });
    },
  };
}
