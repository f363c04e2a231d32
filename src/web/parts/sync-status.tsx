import { homeworkWaiting } from '../homework-waiting.ts';
import { coming, connection, gone, waiting } from '../learner.ts';
import { askingAgain, signedOut } from '../me.ts';
import { words } from '../words.ts';

function statusOf(count: number, how: typeof connection.value): string {
  const { frame } = words('first');
  if (how === 'unkept') return frame.device.notNow;
  if (how === 'too-old') return count === 0 ? '' : frame.standing.waitForNewPage(count);
  if (count > 0)
    return how === 'offline' ? frame.standing.waitForNetwork(count) : frame.standing.waitToBeSent(count);
  if (how === 'offline') return frame.standing.offline;
  const { value: what } = coming;
  return what ? frame.coming[what.what](what) : '';
}

/** What waits for the server, and why. */
export function SyncStatus() {
  const { standing: told } = words('first').frame;
  const count = waiting.value + homeworkWaiting.value;
  if (signedOut.value)
    return (
      <p class="standing" role="status">
        {told.signedOut} {count > 0 ? told.waitSafely(count) : told.goesOn}{' '}
        <button
          type="button"
          class="button plain"
          onClick={() => {
            askingAgain.value = true;
          }}
        >
          {told.signInAgain}
        </button>
      </p>
    );
  const lost = gone.value;
  return (
    <>
      {lost > 0 && (
        <p class="standing caution" role="status">
          {told.thrownAway(lost)}
        </p>
      )}
      <p class="standing">{statusOf(count, connection.value)}</p>
    </>
  );
}
