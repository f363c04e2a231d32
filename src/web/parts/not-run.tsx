import { NotTold } from '../engine/client.ts';
import { words } from '../words.ts';

/** Why a circuit isn't marked or run, and the way on: to the paper it is on, where that is why. */
export function NotRun({ error }: { error: Error }) {
  return (
    <div class="caution" role="alert">
      <p>{error.message}</p>
      {error instanceof NotTold && (
        <p>
          <a class="onward" href="#/homework">
            {words('first').parts.onWithHomework}
          </a>
        </p>
      )}
    </div>
  );
}
