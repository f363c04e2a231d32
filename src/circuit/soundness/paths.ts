/** Stops of the paths: that what they name is there, and that hops lead somewhere. */
import type { Step } from '../../../shared/circuit.ts';
import { supplyTerminals } from '../anatomy/index.ts';
import { type Inside, insideOf } from '../inside.ts';
import { LIMITS } from '../limits.ts';
import { anyOf, didYouMean, someOf } from '../wording.ts';
import type { PartialCircuit, Unsound, Wrong } from './types.ts';

interface Known {
  readonly isSupply: boolean;
  readonly inside: Inside;
  readonly set: ReadonlySet<string>;
}

/** `tolerated`: devices whose declaration could not be read; `unsoundDevices`: by index, what is wrong with the others. */
export function pathFindings(
  { supplies, devices, paths: all }: PartialCircuit,
  tolerated: ReadonlySet<string>,
  unsoundDevices: readonly (readonly Unsound[])[],
): Unsound[] {
  const known = new Map<string, Known>();
  for (const supply of supplies) {
    const terminals = supplyTerminals(supply);
    known.set(supply.name, {
      isSupply: true,
      inside: { terminals, group: new Map() },
      set: new Set(terminals),
    });
  }
  const skipped = new Set(tolerated);
  devices.forEach((device, index) => {
    if (unsoundDevices[index]!.length > 0) skipped.add(device.name);
    else {
      const inside = insideOf(device);
      known.set(device.name, { isSupply: false, inside, set: new Set(inside.terminals) });
    }
  });
  const findings: Unsound[] = [];
  all.forEach(({ steps }, path) => {
    steps.forEach((step, index) => {
      if (!step) return;
      // Whoever reads a thousand findings needs no more.
      if (findings.length >= LIMITS.problems) return;
      const before = index > 0 ? steps[index - 1] : undefined;
      const found =
        stopFinding(step, known, skipped, findings.length) ??
        (before ? joinFinding(before, step) : undefined);
      if (found) findings.push({ ...found, concern: { kind: 'step', path, step: index } });
    });
  });
  return findings;
}

function stopFinding(
  { device, enter, leave }: Step,
  known: ReadonlyMap<string, Known>,
  skipped: ReadonlySet<string>,
  already: number,
): Wrong | undefined {
  const there = known.get(device);
  const isSupply = !device.startsWith('-');
  if (isSupply && leave !== undefined) {
    return {
      code: 'supply-hop',
      message: `A path can't lead through the supply ${device}: it begins or ends there.`,
      hint: `Write one terminal: ${device}:${enter} or ${device}:${leave}.`,
    };
  }
  if (skipped.has(device)) return undefined;
  if (!there) {
    const names = [...known.keys()].filter((name) => name.startsWith('-') !== isSupply);
    // Looking for the nearest of many names costs time: after many mistakes it is left.
    const suggestion = already < 100 ? didYouMean(device, names) : '';
    return isSupply
      ? {
          code: 'unknown-supply',
          message: `There is no supply ${device}.`,
          hint: `${suggestion}Declare it: supply ${device} 24 V DC. Declared: ${someOf(names) || 'none'}.`,
        }
      : {
          code: 'unknown-designation',
          message: `There is no device ${device}.`,
          hint: `${suggestion}Declare it on a line of its own: ${device} relay. Declared: ${someOf(names) || 'none'}.`,
        };
  }
  for (const terminal of leave === undefined ? [enter] : [enter, leave]) {
    if (there.set.has(terminal)) continue;
    return {
      code: 'unknown-terminal',
      message: `${device} has no terminal ${terminal}.`,
      hint: `${didYouMean(terminal, there.set)}Its terminals are ${someOf(there.inside.terminals, 30)}.`,
    };
  }
  if (leave === enter) {
    return {
      code: 'same-terminal-hop',
      message: `A hop can't enter and leave ${device} at the same terminal ${enter}.`,
      hint: `Write ${device}:${enter} to join that terminal, or the terminal on the other side after the hyphen.`,
    };
  }
  const { group, terminals } = there.inside;
  if (leave !== undefined && group.get(enter) !== group.get(leave)) {
    const others = terminals.filter((each) => each !== enter && group.get(each) === group.get(enter));
    return {
      code: 'no-way-through',
      message: `There is nothing in ${device} between ${enter} and ${leave}.`,
      hint:
        others.length > 0
          ? `From ${enter} it goes to ${anyOf(others.slice(0, 6))}: ${device}:${enter}-${others[0]}.`
          : `Join single terminals instead: ${device}:${enter}  ${device}:${leave}.`,
    };
  }
  return undefined;
}

function joinFinding(before: Step, step: Step): Wrong | undefined {
  const from = before.leave ?? before.enter;
  if (before.device !== step.device || from !== step.enter) return undefined;
  return {
    code: 'joins-itself',
    message: `This joins ${step.device}:${from} to itself.`,
    hint: 'Name each terminal once in a row; the conductor goes from there to the next stop.',
  };
}
