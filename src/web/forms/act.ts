import { useCallback, useRef, useState } from 'preact/hooks';
import { ApiFailure, wordsOf } from '../api.ts';

interface ActState {
  readonly busy: boolean;
  /** Why it came to nothing, in words; empty otherwise. */
  readonly failure: string;
  /** The code of the server's refusal, for saying it beside the right field. */
  readonly code: ApiFailure['code'];
}

/** Something that is asked of the server, and how it goes: nothing that was typed is touched when it fails. */
export interface Act extends ActState {
  /** Does it. A second one while the first is under way does nothing. The same function as long as the screen stands. */
  run(work: () => Promise<unknown>): void;
  clear(): void;
  /** Takes what is typed, and what was said of it before is gone. */
  typing(keep: (typed: string) => void): (typed: string) => void;
}

const NOTHING: ActState = { busy: false, failure: '', code: null };

export function useAct(): Act {
  const [state, setState] = useState(NOTHING);
  const busy = useRef(false);
  const run = useCallback((work: () => Promise<unknown>): void => {
    if (busy.current) return;
    busy.current = true;
    setState({ ...NOTHING, busy: true });
    const end = (now: ActState): void => {
      busy.current = false;
      setState(now);
    };
    work().then(
      () => end(NOTHING),
      (error: unknown) =>
        end({
          busy: false,
          failure: wordsOf(error),
          code: error instanceof ApiFailure ? error.code : null,
        }),
    );
  }, []);
  const clear = useCallback((): void => {
    if (!busy.current) setState(NOTHING);
  }, []);
  const typing =
    (keep: (typed: string) => void) =>
    (typed: string): void => {
      clear();
      keep(typed);
    };
  return { ...state, run, clear, typing };
}
