/** How a symbol of a scene looks: which drawing it is, and how its moving parts stand. */
import type { Looks, Pose } from '../symbols/index.ts';
import type { SceneSymbol } from './types.ts';

export function looksOf({ form, actuator, delay, winding, ports, flipped, top }: SceneSymbol): Looks {
  return {
    form,
    ...(actuator ? { actuator } : {}),
    ...(delay ? { delay } : {}),
    ...(winding ? { winding } : {}),
    terminals: ports.length,
    flipped,
    above: ports[0]?.y === top,
  };
}

/** `position`: where the symbol's mechanism stands; 0 is the drawn state; undefined while it travels. */
export function poseOf({ ways, ports, x }: SceneSymbol, position: number | undefined): Pose {
  return {
    closed: ways.map(({ closedIn }) => position !== undefined && closedIn.includes(position)),
    ports: ports.map((port) => port.x - x),
  };
}
