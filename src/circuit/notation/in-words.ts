/** Acts and faults as part of a sentence. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Act } from '../../../shared/scenario.ts';
import { deviceOf } from '../view.ts';

/** `-S1 ("Start")`, or the designation alone where the device has no text. */
function named(circuit: Circuit, name: string): string {
  const text = deviceOf(circuit, name)?.text;
  return text ? `${name} ("${text}")` : name;
}

function outputNamed(circuit: Circuit, name: string, point: string): string {
  const device = deviceOf(circuit, name);
  const text = device?.kind === 'outputs' ? device.points[Number(point.slice(1)) - 1] : undefined;
  return text ? `${name}:${point} ("${text}")` : `${name}:${point}`;
}

function supplyNamed(circuit: Circuit, name: string): string {
  const supply = circuit.supplies.find((each) => each.name === name);
  return supply ? `supply ${name} (${supply.volts} V ${supply.current})` : `supply ${name}`;
}

/** Seconds as they are read: `500 ms`, `5 s`, `2 min`. */
export function timeInWords(seconds: number): string {
  if (seconds < 1) return `${Number((seconds * 1000).toPrecision(12))} ms`;
  return seconds >= 60 && Number.isInteger(seconds / 60) ? `${seconds / 60} min` : `${seconds} s`;
}

/** An instruction: `press -S1 ("Start")`, `break the contact -B1 ("Fan tripped")`. */
export function actInWords(act: Act, circuit: Circuit): string {
  switch (act.kind) {
    case 'wait':
      return `wait ${timeInWords(act.seconds)}`;
    case 'fail':
      return `let ${supplyNamed(circuit, act.supply)} fail`;
    case 'restore':
      return `restore ${supplyNamed(circuit, act.supply)}`;
    case 'turn':
      return `turn ${named(circuit, act.device)} to ${act.to}`;
    case 'make':
    case 'break':
      return `${act.kind} the contact ${named(circuit, act.device)}`;
    case 'on':
    case 'off':
      return `switch the output ${outputNamed(circuit, act.device, act.point)} ${act.kind}`;
    case 'hold':
      return `hold ${named(circuit, act.device)} energised by hand`;
    case 'free':
      return `let go of ${named(circuit, act.device)}`;
    default:
      return `${act.kind} ${named(circuit, act.device)}`;
  }
}
