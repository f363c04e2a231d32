import type { Act } from '../../../../shared/scenario.ts';
import type { Live } from '../../engine/messages.ts';
import { Button } from '../../forms/button.tsx';
import { Acts } from '../../parts/acts.tsx';
import { words } from '../../words.ts';

/** Everything that can be done to the circuit as it stands, and the way back. */
export function WorkPanel({
  live,
  fresh,
  onAct,
  onBack,
  onStart,
}: {
  live: Live;
  /** Nothing has been done or broken yet. */
  fresh: { readonly acts: boolean; readonly all: boolean };
  onAct: (act: Act) => void;
  onBack: () => void;
  onStart: () => void;
}) {
  const { work: w } = words('try');
  return (
    <section>
      <h2>{w.title}</h2>
      <div class="row acts">
        <Acts acts={live.acts} onAct={onAct} />
      </div>
      <p class="row">
        <Button kind="plain" disabled={fresh.acts} onPress={onBack}>
          {w.takeBack}
        </Button>
        <Button kind="plain" disabled={fresh.all} onPress={onStart}>
          {w.fromTheStart}
        </Button>
      </p>
    </section>
  );
}
