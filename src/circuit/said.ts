/** Acts and faults as statements, with the texts that their devices carry. */
import type { Circuit } from '../../shared/circuit.ts';
import type { Act, Fault } from '../../shared/scenario.ts';
import type { ActSaid, FaultSaid, Named, NamedSupply } from '../words/index.ts';
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
    default:
      return { says: act.kind, device: named(circuit, act.device) };
  }
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
      const found = deviceOf(circuit, fault.device);
      // What stands whole or blown has blown; whatever else opens by itself has tripped.
      const blows = found && traitsOf(found).stands?.includes('blown');
      return { says: blows ? 'blown' : 'tripped', device: named(circuit, fault.device) };
    }
    case 'stuck':
      return { says: 'stuck', device: named(circuit, fault.device) };
  }
}
