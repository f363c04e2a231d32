import { useEffect, useRef } from 'preact/hooks';
import { words } from '../../words.ts';
import type { Phase, Session } from './session.ts';

interface Props {
  readonly session: Session;
  readonly phase: Extract<Phase, { kind: 'asking' | 'marked' }>;
  /** Items not answered yet. */
  readonly left: number;
  readonly able: boolean;
}

/** Check and hint, then the verdict and the way on: always within reach. */
export function Bar({ session, phase, left, able }: Props) {
  const { bar } = words('first').practise;
  const next = useRef<HTMLButtonElement>(null);
  const marked = phase.kind === 'marked';
  useEffect(() => {
    if (marked) next.current?.focus({ preventScroll: true });
  }, [marked]);
  const mark = phase.kind === 'marked' ? phase.judgement.mark : undefined;
  const right = mark?.parts.filter(({ correct }) => correct).length ?? 0;
  const unkept = phase.kind === 'asking' && phase.unkept !== undefined;
  const verdict =
    mark === undefined
      ? unkept
        ? bar.notKept
        : ''
      : mark.correct
        ? bar.right
        : mark.parts.length === 1
          ? bar.notRight
          : bar.partlyRight({ right, of: mark.parts.length });
  return (
    <div class="bar">
      <p class={mark ? `verdict ${mark.correct ? 'right' : 'wrong'}` : 'verdict'} role="status">
        {verdict}
      </p>
      {phase.kind === 'marked' ? (
        <button
          ref={next}
          type="button"
          class="button main"
          // A key held down from checking doesn't skip the explanation.
          onKeyDown={(event) => event.repeat && event.preventDefault()}
          onClick={() => session.next()}
        >
          {bar.next}
        </button>
      ) : (
        <>
          <button type="submit" class="button main" disabled={!able}>
            {unkept ? bar.checkAgain : left > 0 ? bar.checkLeft(left) : bar.check}
          </button>
          {phase.hint === undefined && !unkept && (
            <button type="button" class="button plain" onClick={() => session.hint()}>
              {bar.hint}
            </button>
          )}
        </>
      )}
    </div>
  );
}
