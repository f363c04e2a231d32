import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { useAct } from '../../parts/act.ts';
import { Failure } from '../enter/sheet.tsx';

interface Props {
  readonly title?: string;
  /** The button that asks. */
  readonly ask: string;
  /** The button that does it. */
  readonly sure: string;
  /** It can't be undone. */
  readonly stop?: boolean;
  readonly done: () => Promise<unknown>;
  /** What will come of it. */
  readonly children: ComponentChildren;
}

/** Something that wants a second thought: what comes of it, and both ways on. The way back has the focus. */
export function Sure({ title, ask, sure, stop, done, children }: Props) {
  const [asked, setAsked] = useState(false);
  const act = useAct();
  const back = useRef<HTMLButtonElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const was = useRef(false);
  useEffect(() => {
    if (asked) back.current?.focus();
    else if (was.current) opener.current?.focus();
    was.current = asked;
  }, [asked]);
  const run = (): void => act.run(done);
  return (
    <section>
      {title && <h2>{title}</h2>}
      {asked ? (
        <div class="sure">
          {children}
          <p class="row">
            <button
              type="button"
              class={stop ? 'button stop' : 'button main'}
              disabled={act.busy}
              onClick={run}
            >
              {act.busy ? 'One moment…' : sure}
            </button>
            <button
              ref={back}
              type="button"
              class="button"
              disabled={act.busy}
              onClick={() => {
                act.clear();
                setAsked(false);
              }}
            >
              Leave it
            </button>
          </p>
          <Failure words={act.failure} />
        </div>
      ) : (
        <p>
          <button ref={opener} type="button" class="button" onClick={() => setAsked(true)}>
            {ask}
          </button>
        </p>
      )}
    </section>
  );
}
