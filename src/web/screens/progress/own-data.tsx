import { useEffect, useRef, useState } from 'preact/hooks';
import { answered, connection, waiting } from '../../learner.ts';
import { me } from '../../me.ts';
import type { Ground } from '../../start.ts';

const counted = (count: number): string => (count === 1 ? '1 answer' : `${count} answers`);

/** Erasing, once it has been asked for: what goes, what stays, and the two ways on. */
function Confirm({ ground, onBack }: { ground: Ground; onBack: () => void }) {
  const [going, setGoing] = useState(false);
  const [failure, setFailure] = useState<string>();
  const keep = useRef<HTMLButtonElement>(null);
  useEffect(() => keep.current?.focus(), []);
  const erase = async (): Promise<void> => {
    setGoing(true);
    try {
      await ground.learner.erase();
      location.hash = '#/practise';
      location.reload();
    } catch (error) {
      setFailure(error instanceof Error ? error.message : String(error));
      setGoing(false);
    }
  };
  return (
    <div class="confirm">
      <p>
        <strong>This can't be undone.</strong> Gone are {counted(answered.value)} with their circuits and
        marks, what follows from them (how each skill stands and when it comes back), a placement, the date
        and what else you have set: from the server and from this device.
      </p>
      {me.value.mode === 'class' && (
        <p>
          What this device keeps of your homework goes as well, once all of it has been sent. Your account,
          your classes, and your homework papers on the server stay. An administrator can erase those.
        </p>
      )}
      <p>
        Copies stay that somebody made: backups of the server, and files you have downloaded. Another device
        that still has the answers sends them again when it is next opened: erase there too.
      </p>
      <p class="row">
        <button type="button" class="button stop" disabled={going} onClick={erase}>
          {going ? 'Erasing…' : 'Erase everything'}
        </button>
        <button ref={keep} type="button" class="button" disabled={going} onClick={onBack}>
          Keep everything
        </button>
      </p>
      <p role="status" class={failure ? 'caution' : ''}>
        {failure ?? ''}
      </p>
    </div>
  );
}

/** What is kept about the learner: to take along, and to erase. */
export function OwnData({ ground }: { ground: Ground }) {
  const [asked, setAsked] = useState(false);
  const eraseButton = useRef<HTMLButtonElement>(null);
  const offline = connection.value === 'offline';
  return (
    <section class="own-data">
      <h2>What is kept about you</h2>
      <p>
        {counted(answered.value)}, each with its circuit and mark, and what you have set here: on this device,
        and on the server that this page comes from.
      </p>
      {waiting.value > 0 && (
        <p>{counted(waiting.value)} of them not sent yet: a download has them once they have been.</p>
      )}
      {asked ? (
        <Confirm
          ground={ground}
          onBack={() => {
            setAsked(false);
            requestAnimationFrame(() => eraseButton.current?.focus());
          }}
        />
      ) : offline ? (
        <p>Without network it can be neither downloaded nor erased.</p>
      ) : (
        <p class="row">
          <a class="button" href="/api/export" download="polewise-export.json">
            Download it
          </a>
          <button ref={eraseButton} type="button" class="button plain" onClick={() => setAsked(true)}>
            Erase it…
          </button>
        </p>
      )}
    </section>
  );
}
