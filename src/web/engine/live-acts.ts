import type { Circuit, Device } from '../../../shared/circuit.ts';
import type { Act } from '../../../shared/scenario.ts';
import { anatomyOf } from '../../circuit/index.ts';

/** Acts of one device that undo one another, the first one first. */
function pairOf(device: Device): readonly Act[] {
  const { name } = device;
  switch (device.kind) {
    case 'push-button':
    case 'emergency-stop':
      return [
        { kind: 'press', device: name },
        { kind: 'release', device: name },
      ];
    case 'field-contact':
    case 'limit-switch':
    case 'float-switch': {
      const breaks = device.contacts[0]?.form === 'break';
      const made = { kind: 'make', device: name } as const;
      const broken = { kind: 'break', device: name } as const;
      return breaks ? [broken, made] : [made, broken];
    }
    case 'isolator':
    case 'breaker':
    case 'fuse':
      return [
        { kind: 'open', device: name },
        { kind: 'close', device: name },
      ];
    case 'overload':
      return [
        { kind: 'trip', device: name },
        { kind: 'reset', device: name },
      ];
    case 'selector':
      return device.positions.map((to) => ({ kind: 'turn', device: name, to }));
    case 'outputs':
      return anatomyOf(device)
        .terminals.filter((point) => point.startsWith('Q'))
        .flatMap((point) => [
          { kind: 'on' as const, device: name, point },
          { kind: 'off' as const, device: name, point },
        ]);
    case 'relay':
    case 'contactor':
    case 'latching-relay':
    case 'on-delay':
    case 'off-delay':
    case 'flasher':
      return [
        { kind: 'hold', device: name },
        { kind: 'free', device: name },
      ];
    default:
      return [];
  }
}

const sameSubject = (one: Act, other: Act): boolean =>
  'device' in one &&
  'device' in other &&
  one.device === other.device &&
  (!('point' in one) || ('point' in other && one.point === other.point));

/** What can be done next: of acts that undo one another, the one that changes something after those done so far. */
export function liveActs(circuit: Circuit, done: readonly Act[]): Act[] {
  const turned = (act: Act): boolean => {
    const last = done.findLast((before) => sameSubject(before, act));
    return JSON.stringify(last) === JSON.stringify(act);
  };
  const possible = circuit.devices.flatMap((device): Act[] => {
    const acts = pairOf(device);
    if (device.kind === 'selector')
      return acts.filter(
        (act, index) => !turned(act) && (index > 0 || done.some((before) => sameSubject(before, act))),
      );
    const pairs = acts.length / 2;
    return Array.from({ length: pairs }, (_, pair) => {
      const first = acts[2 * pair]!;
      return turned(first) ? acts[2 * pair + 1]! : first;
    });
  });
  return [...possible, { kind: 'wait', seconds: 1 }, { kind: 'wait', seconds: 5 }];
}
