/** Every symbol by the form of its part, with what stands beside it. */
import type { Actuator, Delay, PartForm } from '../parts/index.ts';
import { ACTUATOR, actuatorStrokes, JOIN } from './actuators.ts';
import { type SymbolArt, turnedOver } from './art.ts';
import { breaks } from './break.symbol.ts';
import { breakerPole } from './breaker-pole.symbol.ts';
import { changeover } from './changeover.symbol.ts';
import { coil } from './coil.symbol.ts';
import { common } from './common.symbol.ts';
import { BRAKE, brakeStrokes } from './delays.ts';
import { fuse } from './fuse.symbol.ts';
import { heater } from './heater.symbol.ts';
import { input } from './input.symbol.ts';
import { isolatorPole } from './isolator-pole.symbol.ts';
import { lamp } from './lamp.symbol.ts';
import { mainBreak } from './main-break.symbol.ts';
import { mainMake } from './main-make.symbol.ts';
import { make } from './make.symbol.ts';
import { motor } from './motor.symbol.ts';
import { output } from './output.symbol.ts';
import { sounder } from './sounder.symbol.ts';
import { terminal } from './terminal.symbol.ts';
import { valve } from './valve.symbol.ts';

export { LEG, PHASE, type Pose, type Stroke, type SymbolArt } from './art.ts';

/** Which symbol: what of a part decides how it looks. */
export interface Looks {
  readonly form: PartForm;
  readonly actuator?: Actuator;
  readonly delay?: Delay;
  readonly latch?: 'set' | 'reset';
  /** Its terminals: a motor has three or six. */
  readonly terminals: number;
  readonly flipped: boolean;
  /** A box of a single terminal has it above. */
  readonly above: boolean;
}

function artOf({ form, delay, latch, terminals, above }: Looks): SymbolArt {
  switch (form) {
    case 'make':
      return make;
    case 'break':
      return breaks;
    case 'changeover':
      return changeover;
    case 'main-make':
      return mainMake;
    case 'main-break':
      return mainBreak;
    case 'breaker-pole':
      return breakerPole;
    case 'isolator-pole':
      return isolatorPole;
    case 'fuse':
      return fuse;
    case 'heater':
      return heater;
    case 'coil':
      return coil(delay, latch);
    case 'lamp':
      return lamp;
    case 'sounder':
      return sounder;
    case 'valve':
      return valve;
    case 'motor':
      return motor(terminals);
    case 'input':
      return input(true);
    case 'output':
      return output;
    case 'common':
      return common(above);
    case 'terminal':
      return terminal;
  }
}

const isContact = (form: PartForm): boolean => form === 'make' || form === 'break' || form === 'changeover';

/** Where the moving part stands at the height of the dashed line, seen from either side. */
export function bladeAt(form: PartForm, closed: readonly boolean[], side: 'left' | 'right' = 'left'): number {
  switch (form) {
    case 'break':
    case 'main-break':
      return closed[0] === false ? 10 : 4.1;
    case 'changeover':
      return closed[1] ? 5.5 : closed[0] ? -3.6 : 1;
    case 'heater':
      return side === 'left' ? -9 : 9;
    case 'fuse':
      return side === 'left' ? -5 : 5;
    default:
      return closed[0] ? 0 : -4.5;
  }
}

/** A symbol complete: its size, and its strokes in a state (without one: at rest). */
export function symbolFor(looks: Looks): SymbolArt {
  const art = artOf(looks);
  const { actuator, delay, form } = looks;
  const contact = isContact(form);
  const beside = contact && actuator ? ACTUATOR : contact && delay && delay !== 'pulse' ? BRAKE : 0;
  const turn = looks.flipped && form === 'changeover';
  return {
    ...art,
    left: Math.max(art.left, beside),
    strokes: (pose) => (turn ? turnedOver(art.strokes(pose), art.height) : art.strokes(pose)),
    beside: ({ closed }) => {
      if (!contact) return [];
      const at = bladeAt(form, closed);
      if (actuator) return actuatorStrokes(actuator, at);
      return delay ? brakeStrokes(delay, at) : [];
    },
  };
}

export { JOIN };
