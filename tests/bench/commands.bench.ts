/**
 * What commands cost before they do anything: processor time of the program as it is delivered, above that of an empty Node
 * program measured in turns with it. Processor time, because what else a machine does changes it least.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { started } from '../server/started.ts';
import { median, type Row } from './row.ts';
import { readyToServe } from './served.ts';

const RUNS = 15;
const SERVES = 5;
/** A break-only pair: small, so that what is measured is the beginning. */
const CIRCUIT = `supply A 24 V AC
-B1 field-contact make "Fan tripped"
-K3 relay 2 poles
-H1 lamp green "Fan healthy"
-H2 lamp amber "Fan tripped"
A:L -B1:13-14 -K3:A1-A2 A:N
A:L -K3:11-12 -H1:X1-X2 A:N
-K3:11-14 -H2:X1-X2 A:N
`;
/** Has a program write down at its end what processor time it took. */
const TOLD = fileURLToPath(new URL('tell-processor-time.cjs', import.meta.url));

interface Meter {
  readonly environment: Readonly<Record<string, string>>;
  /** Milliseconds of the program that ended last. */
  read(): number;
}

function meterIn(folder: string): Meter {
  const file = join(folder, 'processor-time');
  return {
    environment: { NODE_OPTIONS: `--require ${TOLD}`, POLEWISE_PROCESSOR_TIME: file },
    read: () => Number(readFileSync(file, 'utf8')),
  };
}

function timeOf(words: readonly string[], { environment, read }: Meter): number {
  const run = spawnSync(process.execPath, words, { env: { ...process.env, ...environment } });
  if (run.status !== 0) throw new Error(`${words.join(' ')}: ${run.stderr}`);
  return read();
}

async function untilReady(program: string, data: string, { environment, read }: Meter) {
  const begun = performance.now();
  const server = await started(program, ['--data', data], environment);
  const ready = performance.now() - begun;
  await server.end('SIGTERM');
  return { ready, processor: read() };
}

export async function bench(): Promise<Row[]> {
  const program = await readyToServe();
  const folder = mkdtempSync(join(tmpdir(), 'polewise-bench-'));
  try {
    const circuit = join(folder, 'fan.txt');
    writeFileSync(circuit, CIRCUIT);
    const meter = meterIn(folder);
    const commands = [
      { name: '--help', words: ['--help'], bound: 60 },
      { name: '--version', words: ['--version'] },
      { name: 'solve', words: ['solve', circuit], bound: 150 },
      { name: 'draw as text', words: ['draw', circuit] },
      { name: 'ask', words: ['ask', '--seed', '7'] },
    ];
    const empty: number[] = [];
    const times = commands.map((): number[] => []);
    for (let run = 0; run < RUNS; run++) {
      empty.push(timeOf(['-e', '0'], meter));
      for (const [at, { words }] of commands.entries()) times[at]!.push(timeOf([program, ...words], meter));
    }
    const serves = [];
    for (let run = 0; run < SERVES; run++)
      serves.push(await untilReady(program, join(folder, `data-${run}`), meter));
    const nothing = median(empty);
    return [
      { name: 'an empty Node program', value: nothing, unit: 'ms processor' },
      ...commands.map(({ name, bound }, at) => ({
        name: `${name}, above an empty Node program`,
        value: median(times[at]!) - nothing,
        unit: 'ms processor',
        ...(bound === undefined ? {} : { bound }),
      })),
      {
        name: 'serve, ready and stopped, above an empty Node program',
        value: median(serves.map(({ processor }) => processor)) - nothing,
        unit: 'ms processor',
      },
      { name: 'serve, until it is ready', value: median(serves.map(({ ready }) => ready)), unit: 'ms' },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
