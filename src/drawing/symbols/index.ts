/** Symbols complete, with what stands beside them. */
import { ACTUATOR, actuatorStrokes, JOIN } from './actuators.ts';
import { type SymbolArt, turnedOver } from './art.ts';
import { BRAKE, brakeStrokes } from './delays.ts';
import { type PartForm, symbolOf } from './registry.ts';
import type { Look } from './symbol.ts';

export { LEG, type Outline, PHASE, type Pose, type Stroke, type SymbolArt } from './art.ts';

/** Which symbol: what of a part decides how it looks. */
export interface Looks extends Look {
  readonly form: PartForm;
}

/** Where the moving part stands at the height of the dashed line, seen from either side. */
export const bladeAt = (
  form: PartForm,
  closed: readonly boolean[],
  side: 'left' | 'right' = 'left',
): number => symbolOf(form).edge?.(closed, side) ?? (closed[0] ? 1.5 : -4.5);

/** A symbol complete: its size, and its strokes in a state (without one: at rest). */
export function symbolFor(looks: Looks): SymbolArt {
  const { actuator, delay, form } = looks;
  const symbol = symbolOf(form);
  const art = symbol.art(looks);
  const contact = symbol.sort === 'contact';
  const beside = contact && actuator ? ACTUATOR : contact && delay && delay !== 'pulse' ? BRAKE : 0;
  const turn = looks.flipped && form === 'changeover';
  return {
    ...art,
    left: Math.max(art.left, beside),
    strokes: (pose) => (turn ? turnedOver(art.strokes(pose), art.height) : art.strokes(pose)),
    beside: ({ closed }) => {
      if (!contact) return [];
      const at = bladeAt(form, closed);
      if (actuator) return actuatorStrokes(actuator, at, form === 'break');
      return delay ? brakeStrokes(delay, at) : [];
    },
  };
}

export { JOIN };
