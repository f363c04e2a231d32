import { useEffect, useRef } from 'preact/hooks';
import type { Phase } from './session.ts';

interface Props {
  readonly phase: Extract<Phase, { kind: 'marked' }>;
  /** Points at devices on the drawing. */
  readonly onAbout: (about: readonly string[]) => void;
  readonly onNext: () => void;
}

/** What the answer is worth, the idea behind it, and why the right one is right. */
export function Marked({ phase, onAbout, onNext }: Props) {
  const { mark } = phase.judgement.judged;
  const next = useRef<HTMLButtonElement>(null);
  const right = mark.parts.filter(({ correct }) => correct).length;
  useEffect(() => next.current?.focus(), []);
  return (
    <div class="marked">
      <p class={mark.correct ? 'verdict whole right' : 'verdict whole wrong'} role="status">
        {mark.correct
          ? 'Right.'
          : mark.parts.length === 1
            ? 'Not right.'
            : `${right} of ${mark.parts.length} right.`}
      </p>
      {mark.misconceptions.length > 0 && (
        <section class="idea">
          <h2>
            {mark.misconceptions.length > 1
              ? 'One of these ideas gives just this answer'
              : 'An idea that gives just this answer'}
          </h2>
          {mark.misconceptions.map(({ id, idea, advice }) => (
            <p key={id}>
              {idea} {advice}
            </p>
          ))}
        </section>
      )}
      <div class="row actions">
        <button ref={next} type="button" class="button main" onClick={onNext}>
          Next
        </button>
        <a href="#/try/last">Try this circuit</a>
      </div>
      <section>
        <h2>Why</h2>
        <ul class="why">
          {mark.explanation.map(({ text, about }) => (
            <li key={text}>
              <button
                type="button"
                class="step"
                onClick={() => onAbout(about)}
                onFocus={() => onAbout(about)}
                onMouseEnter={() => onAbout(about)}
              >
                {text}
              </button>
            </li>
          ))}
        </ul>
      </section>
      {phase.prepared.task.because && <p class="because">{phase.prepared.task.because}</p>}
    </div>
  );
}
