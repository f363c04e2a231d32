import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { words } from '../words.ts';
import { useAct } from './act.ts';
import { Button } from './button.tsx';
import { Failure } from './failure.tsx';

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
export function Confirm({ title, ask, sure, stop, done, children }: Props) {
  const { common } = words('classes');
  const [asked, setAsked] = useState(false);
  const act = useAct();
  const back = useRef<HTMLButtonElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  /** Done or left, there is nothing in it any more that could have the focus. */
  const end = (): void => {
    setAsked(false);
    requestAnimationFrame(() => {
      if (document.activeElement === document.body) opener.current?.focus();
    });
  };
  useLayoutEffect(() => {
    if (asked) back.current?.focus();
  }, [asked]);
  const run = (): void =>
    act.run(async () => {
      await done();
      end();
    });
  return (
    <section>
      {title && <h2>{title}</h2>}
      {asked ? (
        <div class="sure">
          {children}
          <p class="row">
            <Button kind={stop ? 'stop' : 'main'} busy={act.busy} meanwhile={common.oneMoment} onPress={run}>
              {sure}
            </Button>
            <Button
              at={back}
              busy={act.busy}
              onPress={() => {
                act.clear();
                end();
              }}
            >
              {common.leaveIt}
            </Button>
          </p>
          <Failure words={act.failure} />
        </div>
      ) : (
        <p>
          <Button at={opener} onPress={() => setAsked(true)}>
            {ask}
          </Button>
        </p>
      )}
    </section>
  );
}
