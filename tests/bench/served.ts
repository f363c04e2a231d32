/** The server as it is delivered, for a benchmark; built once for a run of benchmarks. */
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Served, started } from '../server/started.ts';
import { buildPrograms, PLACE } from '../support/build-programs.ts';

const folder = join(PLACE, `.polewise-bench-${process.pid}`);
let building: Promise<string> | undefined;

async function build(): Promise<string> {
  mkdirSync(folder, { recursive: true });
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  return join(await buildPrograms(folder), 'src/cli/main.js');
}

/** Builds, so that it doesn't count as starting. */
export async function readyToServe(): Promise<string> {
  building ??= build();
  return building;
}

/** A compiled server, ready. */
export async function served(
  options: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): Promise<Served> {
  return started(await readyToServe(), options, environment);
}
