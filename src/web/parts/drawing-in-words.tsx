import { useEffect, useState } from 'preact/hooks';
import type { Circuit } from '../../../shared/circuit.ts';
import type { Ground } from '../start.ts';
import { words } from '../words.ts';
import { asLongAsWanted } from './as-long-as-wanted.ts';

/** What is connected to what, path by path, for who cannot see the drawing or wants to read it. It gives no answer away. */
export function DrawingInWords({ ground, circuit }: { ground: Ground; circuit: Circuit }) {
  const [open, setOpen] = useState(false);
  const [lines, setLines] = useState<readonly string[]>();
  useEffect(() => setLines(undefined), [circuit]);
  useEffect(() => {
    if (!open || lines) return undefined;
    const saying = ground.engine.call('words', { circuit });
    return asLongAsWanted(saying, setLines, ({ message }) => setLines([message]));
  }, [open, lines, ground, circuit]);
  return (
    <details class="in-words" open={open} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{words('first').parts.drawing.inWords}</summary>
      <ul>
        {(lines ?? []).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </details>
  );
}
