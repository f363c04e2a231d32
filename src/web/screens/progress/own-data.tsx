import { useEffect, useRef, useState } from 'preact/hooks';
import { Button } from '../../forms/button.tsx';
import { answered, connection, waiting } from '../../learner.ts';
import { me } from '../../me.ts';
import type { Ground } from '../../start.ts';
import { set, words } from '../../words.ts';

/** Erasing, once it has been asked for: what goes, what stays, and the two ways on. */
function Confirm({ ground, onBack }: { ground: Ground; onBack: () => void }) {
  const { sure } = words('progress').own;
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
      <p>{set(sure.gone(answered.value), { strong: (text) => <strong>{text}</strong> })}</p>
      {me.value.mode === 'class' && <p>{sure.homework}</p>}
      <p>{sure.copies}</p>
      <p class="row">
        <Button kind="stop" busy={going} meanwhile={sure.erasing} onPress={erase}>
          {sure.erase}
        </Button>
        <Button at={keep} busy={going} onPress={onBack}>
          {sure.keep}
        </Button>
      </p>
      <p role="status" class={failure ? 'caution' : ''}>
        {failure ?? ''}
      </p>
    </div>
  );
}

/** What is kept about the learner: to take along, and to erase. */
export function OwnData({ ground }: { ground: Ground }) {
  const { own } = words('progress');
  const [asked, setAsked] = useState(false);
  const eraseButton = useRef<HTMLButtonElement>(null);
  const offline = connection.value === 'offline';
  return (
    <section class="own-data">
      <h2>{own.title}</h2>
      <p>{own.kept(answered.value)}</p>
      {waiting.value > 0 && <p>{own.notSent(waiting.value)}</p>}
      {asked ? (
        <Confirm
          ground={ground}
          onBack={() => {
            setAsked(false);
            requestAnimationFrame(() => eraseButton.current?.focus());
          }}
        />
      ) : offline ? (
        <p>{own.offline}</p>
      ) : (
        <p class="row">
          <a class="button" href="/api/export" download={own.downloadName}>
            {own.download}
          </a>
          <Button at={eraseButton} kind="plain" onPress={() => setAsked(true)}>
            {own.erase}
          </Button>
        </p>
      )}
    </section>
  );
}
