import type { Act } from '../../../../shared/scenario.ts';
import type { Live } from '../../engine/messages.ts';
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
        {live.acts.map(({ act, words }) => (
          <button key={JSON.stringify(act)} type="button" class="button" onClick={() => onAct(act)}>
            {words}
          </button>
        ))}
      </div>
      <p class="row">
        <button type="button" class="button plain" disabled={fresh.acts} onClick={onBack}>
          {w.takeBack}
        </button>
        <button type="button" class="button plain" disabled={fresh.all} onClick={onStart}>
          {w.fromTheStart}
        </button>
      </p>
    </section>
  );
}
