/** What a program that was interrupted ends with: 128 and the number of SIGINT, as shells have it. */
export const INTERRUPTED = 130;

/**
 * Calls once when the program is told to stop: Ctrl-C, or the signal that a service manager sends. A second one ends it
 * at once, for somebody who can't wait.
 *
 * @returns what lets the program be stopped as any other again
 */
export function whenStopped(call: () => void): () => void {
  let told = false;
  const stop = (signal: NodeJS.Signals): void => {
    if (told) process.exit(signal === 'SIGINT' ? INTERRUPTED : 143);
    told = true;
    call();
  };
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
  return () => {
    process.off('SIGINT', stop);
    process.off('SIGTERM', stop);
  };
}

/** Waits until the program is told to stop. */
export const untilStopped = (): Promise<void> =>
  new Promise((resolve) => {
    whenStopped(resolve);
  });
