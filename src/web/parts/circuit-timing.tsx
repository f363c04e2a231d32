import { useEffect, useState } from 'preact/hooks';
import type { Circuit } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { Picture } from '../engine/messages.ts';
import type { Ground } from '../start.ts';
import { view } from '../view.ts';

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
    let here = true;
    ground.engine.call('timing', { circuit, scenario, view: wanted }).then(
      (made) => here && setPicture(made),
      () => here && setPicture(undefined),
    );
    return () => {
      here = false;
    };
  }, [ground, circuit, scenario, wanted]);
  if (!picture) return null;
  return (
    <figure class="timing">
      <figcaption>What changes when</figcaption>
      <img
        src={`data:image/svg+xml,${encodeURIComponent(picture.svg)}`}
        width={picture.width}
        height={picture.height}
        alt="Timing diagram: a line for each device that changes. The steps of the run say the same in words."
      />
    </figure>
  );
}
