import { useEffect, useState } from 'preact/hooks';
import type { Circuit } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { Picture } from '../engine/messages.ts';
import type { Ground } from '../start.ts';
import { view } from '../view.ts';
import { words } from '../words.ts';
import { asLongAsWanted } from './as-long-as-wanted.ts';

/** What changes when, as lines over time. */
export function CircuitTiming({
  ground,
  circuit,
  scenario,
}: {
  ground: Ground;
  circuit: Circuit;
  scenario: Scenario;
}) {
  const [picture, setPicture] = useState<Picture>();
  const wanted = view.value;
  useEffect(() => {
    const timing = ground.engine.call('timing', { circuit, scenario, view: wanted });
    return asLongAsWanted(timing, setPicture, () => setPicture(undefined));
  }, [ground, circuit, scenario, wanted]);
  if (!picture) return null;
  const { timing } = words('first').parts;
  return (
    <figure class="timing">
      <figcaption>{timing.title}</figcaption>
      <img
        src={`data:image/svg+xml,${encodeURIComponent(picture.svg)}`}
        width={picture.width}
        height={picture.height}
        alt={timing.description}
      />
    </figure>
  );
}
