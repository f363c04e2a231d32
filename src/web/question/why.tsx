import type { ToldExplanation, ToldStep } from '../../../shared/question.ts';
import { unbroken, words } from '../words.ts';

interface Props {
  readonly explanation: ToldExplanation;
  /** Points at devices on a drawing; absent where there is none to point at. */
  readonly onAbout?: (about: readonly string[]) => void;
}

function Step({ step: { text, about }, onAbout }: { step: ToldStep; onAbout: Props['onAbout'] }) {
  if (!onAbout) return <>{unbroken(text)}</>;
  const point = (): void => onAbout(about);
  return (
    <button type="button" class="step" onClick={point} onFocus={point} onMouseEnter={point}>
      {unbroken(text)}
    </button>
  );
}

function Steps({ steps, ...props }: { steps: readonly ToldStep[]; onAbout: Props['onAbout'] }) {
  return (
    <ul>
      {steps.map((step, at) => (
        // The same may happen twice.
        <li key={at}>
          <Step step={step} {...props} />
        </li>
      ))}
    </ul>
  );
}

/** Why the right answer is right: what decides each part, what stands behind it, and under a fold all that happens. */
export function Why({ explanation: { decides, story }, onAbout }: Props) {
  return (
    <div class="why">
      <ul>
        {decides.map((decision, at) => (
          <li key={at}>
            <Step step={decision} onAbout={onAbout} />
            {decision.behind.length > 0 && <Steps steps={decision.behind} onAbout={onAbout} />}
          </li>
        ))}
      </ul>
      {story.length > 0 && (
        <details class="story">
          <summary>{words('first').practise.explained.story}</summary>
          <Steps steps={story} onAbout={onAbout} />
        </details>
      )}
    </div>
  );
}
