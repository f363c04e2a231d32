import { useEffect, useRef, useState } from 'preact/hooks';
import { call, wordsOf } from '../../../api.ts';
import { Button } from '../../../forms/button.tsx';
import { words } from '../../../words.ts';

/** How far making the papers has come. The page asks again and again: between two questions nothing is under way. */
export function Prepare({ set, onMade }: { set: string; onMade: () => void }) {
  const w = words('sets').one.prepare;
  const [stand, setStand] = useState<{ made: number; of: number }>();
  const [failure, setFailure] = useState('');
  const [round, setRound] = useState(0);
  const told = useRef(onMade);
  told.current = onMade;
  useEffect(() => {
    let here = true;
    const make = async (): Promise<void> => {
      let before: number | undefined;
      for (;;) {
        const now = await call('prepareHomework', { params: { set } });
        if (!here) return;
        setStand(now);
        if (now.made >= now.of) {
          told.current();
          return;
        }
        if (before === now.made) throw new Error(words('sets').one.prepare.stuck);
        before = now.made;
      }
    };
    setFailure('');
    make().catch((error: unknown) => here && setFailure(wordsOf(error)));
    return () => {
      here = false;
    };
  }, [set, round]);
  return (
    <div class="prepare" role="status">
      {stand && stand.made < stand.of && (
        <>
          <label>
            {w.drawing(stand)}
            <progress max={stand.of} value={stand.made} />
          </label>
          <p class="quiet">{w.mayBeLeft}</p>
        </>
      )}
      {stand && stand.made >= stand.of && <p>{stand.of === 0 ? w.nobody : w.made(stand.of)}</p>}
      {failure && (
        <p class="refused">
          {failure}{' '}
          <Button kind="plain" onPress={() => setRound(round + 1)}>
            {words('first').frame.tryAgain}
          </Button>
        </p>
      )}
    </div>
  );
}
