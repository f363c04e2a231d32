import { homeworkWaiting } from '../homework-waiting.ts';
import { connection, waiting } from '../learner.ts';
import { askingAgain, signedOut } from '../me.ts';

const waits = (count: number): string => (count === 1 ? '1 answer waits' : `${count} answers wait`);

/** What waits for the server, and why. */
export function Standing() {
  const count = waiting.value + homeworkWaiting.value;
  if (signedOut.value)
    return (
      <p class="standing" role="status">
        You are no longer signed in here.{' '}
        {count > 0 ? `${waits(count)} to be sent; nothing is lost.` : 'Practice goes on; nothing is lost.'}{' '}
        <button
          type="button"
          class="button plain"
          onClick={() => {
            askingAgain.value = true;
          }}
        >
          Sign in again
        </button>
      </p>
    );
  if (count === 0)
    return <p class="standing">{connection.value === 'offline' ? 'No network. Everything works.' : ''}</p>;
  return (
    <p class="standing">
      {waits(count)} {connection.value === 'offline' ? 'for the network.' : 'to be sent.'}
    </p>
  );
}
