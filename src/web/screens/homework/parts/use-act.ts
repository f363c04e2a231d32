import { useState } from 'preact/hooks';
import { wordsOf } from '../../../api.ts';

/** Something that is done on the server at a press: whether it is under way, and why it was refused. */
export function useAct(): {
  readonly busy: boolean;
  readonly failure: string;
  run(work: () => Promise<unknown>): void;
} {
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState('');
  return {
    busy,
    failure,
    run(work) {
      if (busy) return;
      setBusy(true);
      setFailure('');
      work()
        .catch((error: unknown) => setFailure(wordsOf(error)))
        .finally(() => setBusy(false));
    },
  };
}
