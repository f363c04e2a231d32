import { useEffect, useRef } from 'preact/hooks';
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
  const next = useRef<HTMLButtonElement>(null);
  const marked = phase.kind === 'marked';
  useEffect(() => {
    if (marked) next.current?.focus({ preventScroll: true });
  }, [marked]);
  const mark = phase.kind === 'marked' ? phase.judgement.judged.mark : undefined;
  const right = mark?.parts.filter(({ correct }) => correct).length ?? 0;
  const unkept = phase.kind === 'asking' && phase.unkept !== undefined;
  const verdict =
    mark === undefined
      ? unkept
        ? 'Not kept yet'
        : ''
      : mark.correct
        ? 'Right.'
        : mark.parts.length === 1
          ? 'Not right.'
          : `${right} of ${mark.parts.length} right.`;
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
          Next
        </button>
      ) : (
        <>
          <button type="submit" class="button main" disabled={!able}>
            {unkept ? 'Check again' : left > 0 ? `Check (${left} left)` : 'Check'}
          </button>
          {phase.hint === undefined && !unkept && (
            <button type="button" class="button plain" onClick={() => session.hint()}>
              Hint (counts as help)
            </button>
          )}
        </>
      )}
    </div>
  );
}
