/** A server that runs as a program of its own and can be stopped, or killed. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';

export interface Served {
  readonly address: string;
  /** What it has printed so far. */
  printed(): string;
  /** Sends a signal and gives the exit code, null when it was killed. */
  end(signal: 'SIGTERM' | 'SIGINT' | 'SIGKILL'): Promise<number | null>;
  readonly child: ChildProcess;
}

/** Runs `serve` of a compiled program with these options and waits until it has printed all that it says once it is ready; throws what it printed when it ends before. */
export async function started(
  program: string,
  options: readonly string[],
  environment: Readonly<Record<string, string>> = {},
  command = 'serve',
): Promise<Served> {
  const child = spawn(process.execPath, [program, command, '--port', '0', ...options], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, ...environment },
  });
  let printed = '';
  child.stdout.setEncoding('utf8').on('data', (piece: string) => {
    printed += piece;
  });
  child.stderr.setEncoding('utf8').on('data', (piece: string) => {
    printed += piece;
  });
  const gone = once(child, 'exit');
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout.on('data', () => {
      // The lines between these two come piece by piece: the key of a first run, and where answers are kept.
      const found = /ready: (http:\S+).*Stop with Ctrl-C/s.exec(printed)?.[1];
      if (found) resolve(found);
    });
    void gone.then(([code]) => reject(new Error(`It ended with code ${code}: ${printed}`)));
  });
  return {
    address,
    printed: () => printed,
    child,
    async end(signal) {
      child.kill(signal);
      const [code] = await gone;
      return code as number | null;
    },
  };
}
