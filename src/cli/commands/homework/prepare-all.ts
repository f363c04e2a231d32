import type { Desk } from '../../../server/homework/desk.ts';
import { prepareSome } from '../../../server/homework/make-papers.ts';
import type { Io } from '../../io.ts';
import { progressBar } from '../../progress-bar.ts';
import type { StoreOptions } from './store-options.ts';
import { AT_THE_TERMINAL } from './with-desk.ts';

/** Papers still to be made from which on a second program is worth starting. */
const WORTH_HELP = 40;

/** Milliseconds until it is shown again how far it has come, and looked whether it is to stop. */
const AT_A_TIME = 400;

/** The words of the command that makes what is missing and prints nothing. */
const helping = (set: string, { data, banks }: StoreOptions): readonly string[] => [
  'homework',
  'papers',
  set,
  ...(data === undefined ? [] : ['--data', data]),
  ...(banks === undefined ? [] : ['--banks', banks]),
];

export interface Prepared {
  readonly made: number;
  readonly of: number;
}

/**
 * Makes all papers that are missing, or as many as are made when it is stopped. Many are made by two programs at once,
 * for a paper takes a processor and hardly anything else: that no circuit is given twice is the store's to see to.
 */
export async function prepareAll(io: Io, desk: Desk, set: string, options: StoreOptions): Promise<Prepared> {
  const bar = progressBar(io, io.words.progress.papersMade);
  let endHelp: (() => void) | undefined;
  let stopped = false;
  const release = io.whenStopped?.(() => {
    stopped = true;
  });
  try {
    // The first ones at once, so that it is seen from the beginning how far it has come.
    for (let time = 0; ; time = AT_A_TIME) {
      const prepared = await prepareSome(desk, AT_THE_TERMINAL, set, time);
      const { made, of } = prepared;
      bar.show(made, of);
      if (made >= of || stopped) return prepared;
      if (of - made >= WORTH_HELP) endHelp ??= io.alongside?.(helping(set, options));
    }
  } finally {
    release?.();
    endHelp?.();
    bar.end();
  }
}
