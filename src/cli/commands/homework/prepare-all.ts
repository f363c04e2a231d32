import type { Desk } from '../../../server/homework/desk.ts';
import { prepareSome } from '../../../server/homework/make-papers.ts';
import type { Io } from '../../io.ts';
import { progressBar } from '../../progress-bar.ts';
import { AT_THE_TERMINAL, type StoreOptions } from './with-desk.ts';

/** Papers still to be made from which on a second program is worth starting. */
const WORTH_HELP = 40;

/** Milliseconds until it is shown how far it has come. */
const AT_A_TIME = 2500;

/** The words of the command that makes what is missing and prints nothing. */
const helping = (set: string, { data, banks }: StoreOptions): readonly string[] => [
  'homework',
  'papers',
  set,
  ...(data === undefined ? [] : ['--data', data]),
  ...(banks === undefined ? [] : ['--banks', banks]),
];

/**
 * Makes all papers that are missing; gives how many there are. Many are made by two programs at once, for a paper takes
 * a processor and hardly anything else: that no circuit is given twice is the store's to see to.
 */
export async function prepareAll(io: Io, desk: Desk, set: string, options: StoreOptions): Promise<number> {
  const bar = progressBar(io, 'Papers made');
  let endHelp: (() => void) | undefined;
  try {
    for (;;) {
      const { made, of } = await prepareSome(desk, AT_THE_TERMINAL, set, AT_A_TIME);
      bar.show(made, of);
      if (made >= of) return of;
      if (of - made >= WORTH_HELP) endHelp ??= io.alongside?.(helping(set, options));
    }
  } finally {
    endHelp?.();
    bar.end();
  }
}
