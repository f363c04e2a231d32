/**
 * What the shape of the data alone doesn't say: names that are used once and declared, terminals that exist, hops that lead
 * somewhere. The reader and the JSON reader both refuse a circuit that fails here, so inside the project it holds.
 */
import type { Device, Sheet, Step, Supply } from '../../shared/circuit.ts';
import { supplyTerminals } from './anatomy/index.ts';
import { FORMS, numbersAt, terminalsOfForm } from './contact-numbers.ts';
import type { Finding as AnyFinding, Concern } from './findings.ts';
import { type Inside, insideOf } from './inside.ts';
import { LIMITS } from './limits.ts';
import type { CircuitCode } from './problem-codes.ts';
import { anyOf, article, didYouMean, shown, someOf } from './wording.ts';

type Finding = AnyFinding<CircuitCode>;
type Wrong = Omit<Finding, 'concern'>;

/** A circuit as far as it could be read: steps that could not are left out. */
export interface PartialCircuit {
  readonly title?: string | undefined;
  readonly supplies: readonly Supply[];
  readonly devices: readonly Device[];
  readonly sheets: readonly Sheet[];
  readonly paths: readonly { readonly sheet: number; readonly steps: readonly (Step | undefined)[] }[];
}

/** `tolerated`: names whose declaration could not be read; what their paths say of them is not checked. */
export function unsound(circuit: PartialCircuit, tolerated: ReadonlySet<string> = new Set()): Finding[] {
  const tooBig = sizes(circuit);
  if (tooBig.length > 0) return tooBig;
  const sound = circuit.devices.map(contactFindings);
  return [
    ...unprintable(circuit),
    ...namesTwice(circuit),
    ...listedSheets(circuit),
    ...sound.flat(),
    ...paths(circuit, tolerated, sound),
  ];
}

/** Texts go to terminals, pages and paper, one line each: nothing in them that steers a terminal or breaks the line. */
function unprintable({ title, supplies, devices, sheets }: PartialCircuit): Finding[] {
  const findings: Finding[] = [];
  const look = (text: string | undefined, concern: Concern) => {
    const at = text?.search(/[\p{Cc}\p{Zl}\p{Zp}]/u) ?? -1;
    if (text === undefined || at < 0) return;
    findings.push({
      code: 'control-character',
      message: `This text has a character that can't be printed: ${shown(text[at]!)}.`,
      hint: 'Take it out; a text is one line, and a blank serves as a tab.',
      concern,
    });
  };
  look(title, { kind: 'circuit' });
  supplies.forEach(({ text }, index) => {
    look(text, { kind: 'supply', index });
  });
  sheets.forEach((sheet, index) => {
    look(sheet.title, { kind: 'sheet', index });
  });
  devices.forEach((device, index) => {
    const points = 'points' in device ? device.points : [];
    for (const text of [device.text, ...points]) look(text, { kind: 'device', index, field: 'text' });
  });
  return findings;
}

function sizes({ devices, paths: all }: PartialCircuit): Finding[] {
  const stops = all.reduce((sum, { steps }) => sum + steps.length, 0);
  const findings: Finding[] = [];
  const over = (what: string, count: number, most: number) => {
    if (count <= most) return;
    findings.push({
      code: 'too-large',
      message: `The circuit has ${count} ${what}; at most ${most} are read.`,
      hint: 'Divide it into several circuits.',
      concern: { kind: 'circuit' },
    });
  };
  over('devices', devices.length, LIMITS.devices);
  over('current paths', all.length, LIMITS.paths);
  over('stops on its paths', stops, LIMITS.stops);
  if (findings.length > 0) return findings;
  over(
    'terminals',
    devices.reduce((sum, device) => sum + insideOf(device).terminals.length, 0),
    LIMITS.terminals,
  );
  return findings;
}

/** Indices of all but the first of equal names. */
export function repeated(names: readonly (string | number)[]): number[] {
  const seen = new Set<string | number>();
  return names.flatMap((name, index) => {
    if (seen.has(name)) return [index];
    seen.add(name);
    return [];
  });
}

export const duplicateDesignation = (name: string): Wrong => ({
  code: 'duplicate-designation',
  message: `The designation ${name} is used twice.`,
  hint: 'Give every device a designation of its own.',
});

export const duplicateSupply = (name: string): Wrong => ({
  code: 'duplicate-supply',
  message: `There are two supplies ${name}.`,
  hint: 'Give every supply a letter of its own.',
});

/** Supplies and devices whose name is taken. */
export const namesTwice = ({
  supplies,
  devices,
}: Pick<PartialCircuit, 'supplies' | 'devices'>): Finding[] => [
  ...repeated(supplies.map(({ name }) => name)).map(
    (index): Finding => ({
      ...duplicateSupply(supplies[index]!.name),
      concern: { kind: 'supply', index },
    }),
  ),
  ...repeated(devices.map(({ name }) => name)).map(
    (index): Finding => ({
      ...duplicateDesignation(devices[index]!.name),
      concern: { kind: 'device', index },
    }),
  ),
];

function listedSheets({ sheets, paths: all }: PartialCircuit): Finding[] {
  const twice = repeated(sheets.map(({ number }) => number)).map(
    (index): Finding => ({
      code: 'duplicate-sheet',
      message: `Sheet ${sheets[index]!.number} is listed twice.`,
      hint: 'List every sheet once.',
      concern: { kind: 'sheet', index },
    }),
  );
  const listed = new Set(sheets.map(({ number }) => number));
  const lost = all.findIndex(({ sheet }) => !listed.has(sheet));
  if (lost < 0) return twice;
  const { sheet } = all[lost]!;
  const missing: Finding = {
    code: 'sheet-not-listed',
    message: `A path is on sheet ${sheet}, and sheets doesn't list it.`,
    hint: `Add { "number": ${sheet} } to sheets.`,
    concern: { kind: 'path', path: lost },
  };
  return [...twice, missing];
}

function contactFindings(device: Device, index: number): Finding[] {
  const findings: Finding[] = [];
  const find = (code: CircuitCode, field: string, message: string, hint: string) =>
    findings.push({ code, message, hint, concern: { kind: 'device', index, field } });
  const { name } = device;
  const specs = 'contacts' in device ? device.contacts : [];
  const known = device.kind === 'selector' ? device.positions : [];

  for (const [place, { form, terminals, positions = [] }] of specs.entries()) {
    if (terminals.length !== terminalsOfForm(form)) {
      const usual = numbersAt(form, place + 1).join('-');
      find(
        'contact-terminals',
        'contacts',
        `${article(form).replace(/^a/, 'A')} contact of ${name} has ${terminals.length} terminals.`,
        `It has ${terminalsOfForm(form)}, such as ${usual}.`,
      );
    }
    for (const position of positions.filter((each) => !known.includes(each))) {
      find(
        'unknown-position',
        'contacts',
        `${name} has no position ${shown(position)}.`,
        known.length > 0
          ? `${didYouMean(position, known)}Its positions are ${known.join(', ')}.`
          : 'Only a selector has contacts that depend on named positions.',
      );
    }
    if (repeated(positions).length > 0) {
      find(
        'repeated-position',
        'contacts',
        `A contact of ${name} names a position twice.`,
        'Name every position once.',
      );
    }
  }
  if (repeated(known).length > 0) {
    find(
      'repeated-position',
      'positions',
      `Two positions of ${name} have the same name.`,
      'Name them apart.',
    );
  }
  for (const word of known.filter((each) => (FORMS as readonly string[]).includes(each))) {
    find(
      'reserved-position',
      'positions',
      `A position can't be called ${word}: that is a form of contact.`,
      `Write it with a capital, ${word[0]!.toUpperCase()}${word.slice(1)}, or choose another name.`,
    );
  }
  const { terminals } = insideOf(device);
  const twice = repeated(terminals).map((at) => terminals[at]!);
  if (twice.length > 0) {
    find(
      'repeated-terminal',
      'contacts',
      `${name} has the terminal ${anyOf([...new Set(twice)], 'and')} twice.`,
      'Give every contact terminals of its own.',
    );
  }
  if ('points' in device && device.points.length > device.count) {
    find(
      'too-many-points',
      'points',
      `${name} has ${device.count} points and ${device.points.length} texts for them.`,
      `Write at most ${device.count} texts after the device's own.`,
    );
  }
  return findings;
}

interface Known {
  readonly isSupply: boolean;
  readonly inside: Inside;
  readonly set: ReadonlySet<string>;
}

function paths(
  { supplies, devices, paths: all }: PartialCircuit,
  tolerated: ReadonlySet<string>,
  unsoundDevices: readonly (readonly Finding[])[],
): Finding[] {
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
  const findings: Finding[] = [];
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
