import { Button } from '../../forms/button.tsx';
import { set, words } from '../../words.ts';

/** Conductors taken off their terminals, by ordinary controls; the same as by touching terminals of the drawing. */
export function ConductorsPanel({
  terminals,
  off,
  onTurn,
}: {
  terminals: readonly string[];
  off: readonly string[];
  /** Takes the conductor off a terminal, or puts it back. */
  onTurn: (terminal: string) => void;
}) {
  const { conductors: w } = words('try');
  return (
    <section>
      <h2>{w.title}</h2>
      <p class="told">{w.note}</p>
      <select
        aria-label={w.takeOff}
        value=""
        onChange={({ currentTarget: { value } }) => value && onTurn(value)}
      >
        <option value="">{w.offAtTerminal}</option>
        {terminals
          .filter((terminal) => !off.includes(terminal))
          .map((terminal) => (
            <option key={terminal}>{terminal}</option>
          ))}
      </select>
      <ul class="readings" aria-live="polite">
        {off.map((terminal) => (
          <li key={terminal}>
            {set(w.offAt, { terminal: <strong>{terminal}</strong> })}{' '}
            <Button kind="plain" onPress={() => onTurn(terminal)}>
              {w.putBack}
            </Button>
          </li>
        ))}
      </ul>
      <p class="caution">{w.caution}</p>
    </section>
  );
}
