import { useEffect, useState } from 'preact/hooks';
import type { Circuit } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { Drawn } from '../engine/messages.ts';
import type { Ground } from '../start.ts';
import { view } from '../view.ts';
import { words } from '../words.ts';
import { asLongAsWanted } from './as-long-as-wanted.ts';
import { Drawing } from './drawing.tsx';

/** A circuit drawn at rest, or as it stands after a scenario. */
export function CircuitDrawing({
  ground,
  circuit,
  scenario,
}: {
  ground: Ground;
  circuit: Circuit;
  scenario: Scenario | null;
}) {
  const [drawn, setDrawn] = useState<Drawn>();
  const [failure, setFailure] = useState<string>();
  const wanted = view.value;
  useEffect(() => {
    const drawing = ground.engine.call('draw', { circuit, scenario, view: wanted });
    return asLongAsWanted(drawing, setDrawn, ({ message }) => setFailure(message));
  }, [ground, circuit, scenario, wanted]);
  const { drawing } = words('first').parts;
  if (failure) return <p role="status">{drawing.failed(failure)}</p>;
  if (!drawn) return <p class="waiting">{drawing.underWay}</p>;
  return (
    <Drawing
      drawn={drawn}
      description={scenario ? drawing.after(circuit.title) : drawing.atRest(circuit.title)}
    />
  );
}
