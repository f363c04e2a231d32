import type { Device } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { anatomyOf } from './anatomy/index.ts';

/**
 * What can be done to one device, by a person, the process or a program: in pairs that undo one another, the one that
 * leaves the drawn state (or, for what feeds, the live one) first; of a selector one act for each position. Empty for what
 * nothing can be done to.
 */
export function actsOn(device: Device): readonly Act[] {
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
