import { ApiFailure } from '../../api.ts';

/** Milliseconds for which a server may think before what is kept here is shown instead. */
const PATIENCE = 8_000;

/**
 * Asks the server; where it can't be reached, or says nothing for long, what is kept on this device does.
 *
 * @throws what the server refused, or that it can't be reached where nothing is kept
 */
export async function fromServerOrDevice<T, K>(
  ask: (signal: AbortSignal | undefined) => Promise<T>,
  kept: Promise<K | undefined>,
): Promise<{ readonly from: 'server'; readonly value: T } | { readonly from: 'device'; readonly value: K }> {
  const there = await kept;
  const signal = there === undefined ? undefined : AbortSignal.timeout(PATIENCE);
  try {
    return { from: 'server', value: await ask(signal) };
  } catch (error) {
    const unreached = signal?.aborted === true || (error instanceof ApiFailure && error.code === null);
    if (there === undefined || !unreached) throw error;
    return { from: 'device', value: there };
  }
}
