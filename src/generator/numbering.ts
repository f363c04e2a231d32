/** Designations as drawings have them: numbered in the order of the paths, but not always from one and not without gaps. */
import type { Circuit, Device, Step } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import type { Random } from './random.ts';

type Style = 'plain' | 'later' | 'gaps' | 'tens' | 'hundreds';
const STYLES: readonly Style[] = ['plain', 'plain', 'later', 'gaps', 'tens', 'hundreds'];

/** The next number after `last` (0: none yet) for a device on the given sheet. */
function next(random: Random, style: Style, last: number, sheet: number): number {
  switch (style) {
    case 'plain':
      return last + 1;
    case 'later':
      return last === 0 ? random.int(2, 8) : last + 1;
    case 'gaps':
      return last + random.int(1, 3);
    case 'tens':
      return Math.max(last, sheet * 10) + 1;
    case 'hundreds':
      return Math.max(last, sheet * 100) + random.int(1, 2);
  }
}

/** What is in the field or on a desk was mostly numbered there, in another order than the drawing's. */
const NUMBERED_ELSEWHERE: ReadonlySet<string> = new Set(['-B', '-S']);
const ELSEWHERE = 0.7;

/** Exchanges the names of those with the same letter among them. */
function inAnotherOrder(random: Random, names: ReadonlyMap<string, string>): ReadonlyMap<string, string> {
  const mixed = new Map(names);
  for (const letter of NUMBERED_ELSEWHERE) {
    const own = [...names.keys()].filter((name) => name.replace(/[0-9]/g, '') === letter);
    const given = random.shuffle(own.map((name) => names.get(name)!));
    own.forEach((name, index) => {
      mixed.set(name, given[index]!);
    });
  }
  return mixed;
}

/** New names for all devices, by first appearance on the paths; devices on no path come last. */
export function designations(
  random: Random,
  devices: readonly Device[],
  paths: Circuit['paths'],
): ReadonlyMap<string, string> {
  const style = random.pick(STYLES);
  const last = new Map<string, number>();
  const names = new Map<string, string>();
  const give = (name: string, sheet: number): void => {
    if (!name.startsWith('-') || names.has(name)) return;
    const letters = name.replace(/[0-9]/g, '');
    const number = next(random, style, last.get(letters) ?? 0, sheet);
    last.set(letters, number);
    names.set(name, `${letters}${number}`);
  };
  for (const { sheet, steps } of paths) for (const { device } of steps) give(device, sheet);
  for (const { name } of devices) give(name, paths.at(-1)?.sheet ?? 1);
  return random.chance(ELSEWHERE) ? inAnotherOrder(random, names) : names;
}

export const renamedStep = (step: Step, names: ReadonlyMap<string, string>): Step => ({
  ...step,
  device: names.get(step.device) ?? step.device,
});

export const renamedAct = (act: Act, names: ReadonlyMap<string, string>): Act =>
  'device' in act ? { ...act, device: names.get(act.device) ?? act.device } : act;

/** A device's name, or one with a point after it: `-A1:I2`. */
export function renamedItem(item: string, names: ReadonlyMap<string, string>): string {
  const colon = item.indexOf(':');
  if (colon < 0) return names.get(item) ?? item;
  const device = item.slice(0, colon);
  return `${names.get(device) ?? device}${item.slice(colon)}`;
}
