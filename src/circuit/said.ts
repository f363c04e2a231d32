/** Acts and faults as statements, with the texts that their devices carry. */
import type { Circuit } from '../../shared/circuit.ts';
import type { Act, Fault } from '../../shared/scenario.ts';
import type { ActSaid, FaultSaid, Named, NamedSupply } from '../words/index.ts';
import { actsOn } from './acts-on.ts';
import { anatomyOf } from './anatomy/index.ts';
import { traitsOf } from './devices/registry.ts';
import { deviceOf } from './view.ts';

/** A device with the text it carries. */
export function named(circuit: Circuit, name: string): Named {
  const text = deviceOf(circuit, name)?.text;
  return text ? { name, text } : { name };
}

function outputNamed(circuit: Circuit, device: string, point: string): Named {
  const name = `${device}:${point}`;
  const found = deviceOf(circuit, device);
  const text = found && anatomyOf(found).mechanisms.find(({ id }) => id === name)?.text;
  return text ? { name, text } : { name };
}

function supplyNamed(circuit: Circuit, name: string): NamedSupply {
  const supply = circuit.supplies.find((each) => each.name === name);
  return supply ? { name, volts: supply.volts, current: supply.current } : { name };
}

/** What is done, as a statement. */
export function actSaid(act: Act, circuit: Circuit): ActSaid {
  switch (act.kind) {
    case 'wait':
      return { says: 'wait', seconds: act.seconds };
    case 'fail':
    case 'restore':
      return { says: act.kind, supply: supplyNamed(circuit, act.supply) };
    case 'turn':
      return { says: 'turn', device: named(circuit, act.device), to: act.to };
    case 'on':
    case 'off':
      return { says: act.kind, output: outputNamed(circuit, act.device, act.point) };
    case 'open':
    case 'close':
      return {
        says: isFuse(act.device, circuit) ? FUSES[act.kind] : act.kind,
        device: named(circuit, act.device),
      };
    case 'make':
    case 'break':
      return { says: actuates(act, circuit) ? 'actuate' : 'goBack', device: named(circuit, act.device) };
    case 'release':
      return {
        says: staysIn(act.device, circuit) ? 'unlatch' : 'release',
        device: named(circuit, act.device),
      };
    default:
      return { says: act.kind, device: named(circuit, act.device) };
  }
}

/** Whether what is pressed stays in until it is let out again, as an emergency stop does. */
function staysIn(name: string, circuit: Circuit): boolean {
  const found = deviceOf(circuit, name);
  return found !== undefined && !traitsOf(found).momentary;
}

/**
 * Whether what the plant does to a contact leaves the state that is drawn. The notation goes by what the first contact does; said like
 * that it would tell what is to be read off the drawing.
 */
function actuates({ kind, device }: Extract<Act, { kind: 'make' | 'break' }>, circuit: Circuit): boolean {
  const found = deviceOf(circuit, device);
  return found === undefined || actsOn(found)[0]?.kind === kind;
}

const FUSES = { open: 'takeOut', close: 'putBack' } as const;

/** What stands whole or blown is taken out and put back; a breaker or an isolator is opened and closed. */
function isFuse(name: string, circuit: Circuit): boolean {
  const found = deviceOf(circuit, name);
  return found !== undefined && (traitsOf(found).stands?.includes('blown') ?? false);
}

/** What is wrong, as a statement. */
export function faultSaid(fault: Fault, circuit: Circuit): FaultSaid {
  switch (fault.kind) {
    case 'loose':
      return { says: 'loose', at: fault.at };
    case 'crossed':
      return { says: 'crossed', one: fault.one, other: fault.other };
    case 'dirty':
      return { says: 'dirty', from: fault.from, to: fault.to, ohms: fault.ohms };
    case 'cut':
    case 'welded':
    case 'open':
    case 'shorted':
      return { says: fault.kind, from: fault.from, to: fault.to };
    case 'blown': {
      // Whatever else opens by itself has tripped.
      const says = isFuse(fault.device, circuit) ? 'blown' : 'tripped';
      return { says, device: named(circuit, fault.device) };
    }
    case 'stuck':
      return { says: 'stuck', device: named(circuit, fault.device) };
  }
}
