/** The letters of reference designations: as somebody wrote them, by old practice, or after IEC 81346. Never mixed. */
import type { Circuit, Device } from '../../shared/circuit.ts';

/** What a designation is called on the drawing. */
export type Rename = (designation: string) => string;

export type Letters = 'as-written' | 'old' | 'new';

export const plainLetters: Rename = (designation) => designation;

/**
 * The letter a device should have. Old practice (IEC 60750): H lamp, K relay and contactor, S control switch, F protection,
 * Q circuit-breaker, Y valve, M motor, B sensor. IEC 81346-2: P lamp and sounder, K relay, Q power contactor and isolator,
 * S control switch, B sensor, F protection, M motor and valve, X terminal. First letters; second ones are left off.
 */
function letterOf(device: Device, letters: 'old' | 'new'): string {
  const old = letters === 'old';
  switch (device.kind) {
    case 'relay':
    case 'on-delay':
    case 'off-delay':
    case 'flasher':
    case 'latching-relay':
      return 'K';
    case 'contactor':
      return old || device.mains === 0 ? 'K' : 'Q';
    case 'push-button':
    case 'emergency-stop':
    case 'selector':
      return 'S';
    case 'field-contact':
    case 'limit-switch':
    case 'float-switch':
      return 'B';
    case 'overload':
    case 'fuse':
      return 'F';
    case 'breaker':
      return old ? 'Q' : 'F';
    case 'isolator':
      return 'Q';
    case 'lamp':
    case 'sounder':
      return old ? 'H' : 'P';
    case 'valve':
      return old ? 'Y' : 'M';
    case 'motor':
      return 'M';
    case 'inputs':
    case 'outputs':
      return 'A';
    case 'terminals':
      return 'X';
  }
}

/** Designations that keep their letter keep their number too; of the others, one whose number is taken gets the next. */
export function renameFor({ devices }: Pick<Circuit, 'devices'>, letters: Letters): Rename {
  if (letters === 'as-written') return plainLetters;
  const names = new Map<string, string>();
  const taken = new Set<string>();
  const wanted = devices.map((device) => {
    const [, letter = '', number = ''] = /^-([A-Z]+)([0-9]+)$/.exec(device.name) ?? [];
    return { device, same: letter[0] === letterOf(device, letters), number: Number(number) };
  });
  for (const { device, same } of wanted)
    if (same) {
      names.set(device.name, device.name);
      taken.add(device.name);
    }
  for (const { device, same, number } of wanted) {
    if (same) continue;
    let at = number;
    while (taken.has(`-${letterOf(device, letters)}${at}`)) at += 1;
    const name = `-${letterOf(device, letters)}${at}`;
    taken.add(name);
    names.set(device.name, name);
  }
  return (designation) => names.get(designation) ?? designation;
}
