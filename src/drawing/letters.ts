/** The letters of reference designations: as somebody wrote them, by old practice, or after IEC 81346. Never mixed. */
import type { Circuit, Device } from '../../shared/circuit.ts';
import { drawnAs } from './devices/registry.ts';

/** What a designation is called on the drawing. */
export type Rename = (designation: string) => string;

export type Letters = 'as-written' | 'old' | 'new';

export const plainLetters: Rename = (designation) => designation;

const letterOf = (device: Device, letters: 'old' | 'new'): string => drawnAs(device).letter(device, letters);

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
