import type { Desk } from '../../../server/homework/desk.ts';
import { prepareSome } from '../../../server/homework/make-papers.ts';
import type { Io } from '../../io.ts';
import { progressBar } from '../../progress-bar.ts';
import { AT_THE_TERMINAL } from './with-desk.ts';

/** Makes all papers that are missing; gives how many there are. */
export async function prepareAll(io: Io, desk: Desk, set: string): Promise<number> {
  const bar = progressBar(io, 'Papers made');
  try {
    for (;;) {
      const { made, of } = await prepareSome(desk, AT_THE_TERMINAL, set);
      bar.show(made, of);
      if (made >= of) return of;
    }
  } finally {
    bar.end();
  }
}
