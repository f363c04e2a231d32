import { homeworkWaiting } from '../homework-waiting.ts';
import { coming, connection, gone, waiting } from '../learner.ts';
import { askingAgain, signedOut } from '../me.ts';

const counted = (count: number): string => (count === 1 ? '1 answer' : `${count} answers`);
const waits = (count: number): string => `${counted(count)} ${count === 1 ? 'waits' : 'wait'}`;

function standing(count: number, how: typeof connection.value): string {
  if (how === 'unkept') return 'This browser does not let the page keep anything just now.';
  if (how === 'too-old') return count === 0 ? '' : `${waits(count)} until the page is loaded anew.`;
  if (count === 0) return how === 'offline' ? 'No network. Everything works.' : (coming.value?.words ?? '');
  return `${waits(count)} ${how === 'offline' ? 'for the network.' : 'to be sent.'}`;
}

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
  const lost = gone.value;
  return (
    <>
      {lost > 0 && (
        <p class="standing caution" role="status">
          This browser has thrown away what the page kept on this device. {counted(lost)} not yet sent{' '}
          {lost === 1 ? 'is' : 'are'} gone.
        </p>
      )}
      <p class="standing">{standing(count, connection.value)}</p>
    </>
  );
}
