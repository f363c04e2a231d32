import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { wordsOf } from '../api.ts';
import { Button } from '../forms/button.tsx';
import { words } from '../words.ts';
import { asLongAsWanted } from './as-long-as-wanted.ts';

/** Something asked of the server: being fetched, there, or refused in words. */
export type Fetched<T> =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'there'; readonly value: T }
  | { readonly kind: 'failed'; readonly why: string };

/** Asks for something whenever `key` changes, and again on demand: while it is asked again what was there stays. */
export function useFetched<T>(
  key: string,
  ask: () => Promise<T>,
): { readonly fetched: Fetched<T>; again(): void; put(value: T): void } {
  const [held, setHeld] = useState<{ readonly of: string; readonly fetched: Fetched<T> }>();
  const [round, setRound] = useState(0);
  const asking = useRef(ask);
  asking.current = ask;
  useEffect(() => {
    const hold = (fetched: Fetched<T>): void => setHeld({ of: key, fetched });
    return asLongAsWanted(
      asking.current(),
      (value) => hold({ kind: 'there', value }),
      (error) => hold({ kind: 'failed', why: wordsOf(error) }),
    );
  }, [key, round]);
  return {
    fetched: held?.of === key ? held.fetched : { kind: 'waiting' },
    again: () => setRound(round + 1),
    put: (value) => setHeld({ of: key, fetched: { kind: 'there', value } }),
  };
}

/** What was fetched, or why it is not there and what can be done. */
export function Show<T>({
  of,
  again,
  waiting = words('homework').common.fetching,
  children,
}: {
  of: Fetched<T>;
  again: () => void;
  waiting?: string;
  children: (value: T) => ComponentChildren;
}) {
  switch (of.kind) {
    case 'waiting':
      return <p role="status">{waiting}</p>;
    case 'there':
      return <>{children(of.value)}</>;
    case 'failed':
      return (
        <div class="refused" role="alert">
          <p>{of.why}</p>
          <Button onPress={again}>{words('first').frame.tryAgain}</Button>
        </div>
      );
  }
}
