import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';

/** Something asked of the server: being fetched, there, or refused in words. */
export type Fetched<T> =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'there'; readonly value: T }
  | { readonly kind: 'failed'; readonly why: string; readonly hint: string };

/** What went wrong, in words for a person. */
export function wordsOf(error: unknown): { readonly why: string; readonly hint: string } {
  const { message, hint } = error as { readonly message?: unknown; readonly hint?: unknown };
  return {
    why: typeof message === 'string' ? message : String(error),
    hint: typeof hint === 'string' ? hint : '',
  };
}

/**
 * Asks for something when what it depends on changes, and again on demand. While it is asked again what was there
 * stays.
 */
export function useFetched<T>(
  ask: () => Promise<T>,
  dependsOn: readonly unknown[],
): { readonly fetched: Fetched<T>; again(): void; put(value: T): void } {
  const [fetched, setFetched] = useState<Fetched<T>>({ kind: 'waiting' });
  const [round, setRound] = useState(0);
  // biome wants the function itself among these; what it depends on is told instead.
  const asked = useCallback(ask, dependsOn);
  useEffect(() => setFetched({ kind: 'waiting' }), [asked]);
  useEffect(() => {
    let here = true;
    asked().then(
      (value) => here && setFetched({ kind: 'there', value }),
      (error: unknown) => here && setFetched({ kind: 'failed', ...wordsOf(error) }),
    );
    return () => {
      here = false;
    };
  }, [asked, round]);
  return {
    fetched,
    again: () => setRound((before) => before + 1),
    put: (value) => setFetched({ kind: 'there', value }),
  };
}

/** What was fetched, or why it is not there and what can be done. */
export function Show<T>({
  of,
  again,
  waiting = 'Fetching…',
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
          <p>
            {of.why} {of.hint}
          </p>
          <button type="button" class="button" onClick={again}>
            Try again
          </button>
        </div>
      );
  }
}
