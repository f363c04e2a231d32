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
  return (
    <section>
      <h2>Break a conductor</h2>
      <p class="told">
        Touch a terminal on the drawing, or choose it here: its conductor comes off. Touch it again and it is
        back.
      </p>
      <select
        aria-label="Take the conductor off"
        value=""
        onChange={({ currentTarget: { value } }) => value && onTurn(value)}
      >
        <option value="">off at terminal…</option>
        {terminals
          .filter((terminal) => !off.includes(terminal))
          .map((terminal) => (
            <option key={terminal}>{terminal}</option>
          ))}
      </select>
      <ul class="readings" aria-live="polite">
        {off.map((terminal) => (
          <li key={terminal}>
            off at <strong>{terminal}</strong>{' '}
            <button type="button" class="button plain" onClick={() => onTurn(terminal)}>
              Put it back
            </button>
          </li>
        ))}
      </ul>
      <p class="caution">
        On a real panel no conductor is taken off live: isolate, lock off, prove dead with a proved tester,
        and mind supplies from elsewhere that stay live. Local codes and licensed practice apply.
      </p>
    </section>
  );
}
