/**
 * Waits until the program is told to stop: Ctrl-C, or the signal that a service manager sends. A second one ends it at
 * once, for somebody who can't wait.
 */
export function untilStopped(): Promise<void> {
  return new Promise((resolve) => {
    let told = false;
    const stop = (signal: NodeJS.Signals): void => {
      // 128 and the signal's number, as shells have it.
      if (told) process.exit(signal === 'SIGINT' ? 130 : 143);
      told = true;
      resolve();
    };
    process.on('SIGINT', stop);
    process.on('SIGTERM', stop);
  });
}
