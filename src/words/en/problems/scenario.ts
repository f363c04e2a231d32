/** What can be wrong with acts and faults, and with what they are done to. */
import { speech } from '../speech.ts';
import { article, asMeant, type Slip, shown, someOf } from './parts.ts';

/** Every word for a fault with an example. */
const FAULT_EXAMPLES = {
  broken: '-K3:14 broken (the conductor at a terminal) or -H2:X2 A:N broken (the wire between two)',
  welded: '-K3:11-14 welded',
  dirty: '-K3:11-14 dirty 500 ohm',
  open: '-K3:A1-A2 open',
  shorted: '-K3:A1-A2 shorted',
  blown: '-F1 blown',
  crossed: '-K3:12 -K3:14 crossed',
  stuck: '-K3 stuck',
};
export type FaultWord = keyof typeof FAULT_EXAMPLES;

const faultLike = (word: FaultWord): string =>
  `Write it like ${FAULT_EXAMPLES[word]}, with a semicolon between two faults.`;

const FAULTY = {
  welded: 'welded',
  dirty: 'dirty',
  open: 'open',
  shorted: 'shorted',
  blown: 'blown',
  stuck: 'stuck',
};
type Faulty<F extends keyof typeof FAULTY> = { readonly fault: F };

interface Between {
  readonly name: string;
  readonly one: string;
  readonly other: string;
}

export const scenarioProblems = {
  'too-large.actsText': ({ most }: { most: number }) => ({
    wrong: `This is too long to be read: at most ${most} characters.`,
    right: 'Leave some acts out.',
  }),
  'too-large.faultsText': ({ most }: { most: number }) => ({
    wrong: `This is too long to be read: at most ${most} characters.`,
    right: 'Leave some faults out.',
  }),
  'too-large.acts': ({ count, most }: { count: number; most: number }) => ({
    wrong: `There are ${count} acts; at most ${most} are read.`,
    right: 'Leave some acts out.',
  }),
  'too-large.faults': ({ count, most }: { count: number; most: number }) => ({
    wrong: `There are ${count} faults; at most ${most} are read.`,
    right: 'Leave some faults out.',
  }),
  'unknown-designation.inCircuit': ({
    name,
    names,
    ...slip
  }: Slip & { name: string; names: readonly string[] }) => ({
    wrong: `There is no device ${name} in this circuit.`,
    right: asMeant(slip, `It has ${someOf(names) || 'no device'}.`),
  }),
  'unknown-supply.inCircuit': ({ name, names }: { name: string; names: readonly string[] }) => ({
    wrong: `There is no supply ${name} in this circuit.`,
    right: names.length === 1 ? `It has the supply ${names[0]}.` : `It has the supplies ${someOf(names)}.`,
  }),
  /** A terminal that is there, and no output. */
  'unknown-terminal.ofThatSort': ({
    name,
    terminal,
    terminals,
    ...slip
  }: Slip & { name: string; terminal: string; terminals: readonly string[] }) => ({
    wrong: `${name} has no terminal ${terminal} of that sort.`,
    right: asMeant(slip, `Its terminals are ${someOf(terminals, 30)}.`),
  }),

  'unknown-act': ({ word, verbs, ...slip }: Slip & { word: string; verbs: readonly string[] }) => ({
    wrong: `${shown(word)} is no act.`,
    right: asMeant(slip, `There are: ${verbs.join(', ')}.`),
  }),
  'bad-act.tooMuch': ({ word }: { word: string }) => ({
    wrong: `${shown(word)} is too much here.`,
    right: 'Put a semicolon between two acts.',
  }),
  'bad-act.wait': {
    wrong: 'How long is the wait?',
    right: 'Write a time in ms, s or min: wait 5 s.',
  },
  'bad-act.supply': ({ act }: { act: 'fail' | 'restore' }) => ({
    wrong: `Which supply is to ${act}?`,
    right: `Write its letter: ${act} A.`,
  }),
  'bad-act.turn': ({ name, positions }: { name: string; positions: readonly string[] }) => ({
    wrong: `To which position is ${name} turned?`,
    right:
      positions.length > 0
        ? `Its positions are ${positions.join(', ')}: turn ${name} ${positions.at(-1)}.`
        : `Write the position after it: turn ${name} Auto.`,
  }),
  'unknown-position.turn': ({
    name,
    position,
    positions,
    ...slip
  }: Slip & { name: string; position: string; positions: readonly string[] }) => ({
    wrong: `${name} has no position ${shown(position)}.`,
    right: asMeant(slip, `Its positions are ${positions.join(', ')}: turn ${name} ${positions.at(-1)}.`),
  }),
  'bad-act.output': ({ act }: { act: 'on' | 'off' }) => ({
    wrong: `Which output is switched ${act}?`,
    right: `Write the controller's output with its point: ${act} -A2:Q1.`,
  }),
  'bad-act.device': ({ act, example }: { act: string; example: string }) => ({
    wrong: `What is to be done "${act}" to?`,
    right: `Write a device after it: ${act} ${example}.`,
  }),
  'bad-act.designation': ({ word, act, example }: { word: string; act: string; example: string }) => ({
    wrong: `${shown(word)} is no reference designation.`,
    right: `Write a device after it: ${act} ${example}.`,
  }),
  /** `possible`: what can be done to it; `kinds`: what the act is for. */
  'act-not-possible': (act: {
    act: string;
    name: string;
    kind: string;
    possible: readonly string[];
    kinds: readonly string[];
  }) => ({
    wrong: `"${act.act}" can't be done to ${act.name}: it is ${article(act.kind)}.`,
    right:
      act.possible.length > 0
        ? `What can be done to it: ${speech.or(act.possible)}.`
        : `"${act.act}" is for ${speech.or(act.kinds)}.`,
  }),

  'unknown-fault': ({ words, ...slip }: Slip & { words: readonly string[] }) => ({
    wrong: 'What is wrong there?',
    right: asMeant(slip, `End it with ${words.join(', ')}.`),
  }),
  'bad-fault': ({ places, fault }: { places: string; fault: FaultWord }) => ({
    wrong: places === '' ? `Nothing can't be ${fault}.` : `${shown(places)} can't be ${fault}.`,
    right: faultLike(fault),
  }),
  'bad-fault.tooMuch': ({ word, fault }: { word: string; fault: FaultWord }) => ({
    wrong: `${shown(word)} is too much here.`,
    right: faultLike(fault),
  }),
  'fault-not-possible.unwired': ({ terminals }: { terminals: readonly string[] }) => ({
    wrong: `No conductor comes to ${speech.or(terminals)}.`,
    right: 'Name a terminal that a path comes to.',
  }),
  /** `others`: where wires go to from there. */
  'fault-not-possible.noWire': ({
    from,
    to,
    others,
  }: {
    from: string;
    to: string;
    others: readonly string[];
  }) => ({
    wrong: `No wire goes straight from ${from} to ${to}.`,
    right:
      others.length > 0
        ? `From ${from} a wire goes to ${someOf(others)}.`
        : `No conductor comes to ${from}: name two neighbours on a path.`,
  }),
  'fault-not-possible.itself': {
    wrong: 'A conductor is exchanged with another one.',
    right: 'Name two terminals.',
  },
  'fault-not-possible.again': ({ at }: { at: string }) => ({
    wrong: `The conductors on ${at} are exchanged already.`,
    right: 'Exchange each terminal once.',
  }),
  'fault-not-possible.noContact': ({
    name,
    one,
    other,
    fault,
    contacts,
  }: Between & Faulty<'welded' | 'dirty'> & { contacts: readonly string[] }) => ({
    wrong: `${name} has no contact between ${one} and ${other} that could be ${FAULTY[fault]}.`,
    right: `Its contacts are ${someOf(contacts) || 'none'}.`,
  }),
  'fault-not-possible.isLoad': ({ name, one, other, fault }: Between & Faulty<'welded' | 'dirty'>) => ({
    wrong: `${name} has no contact between ${one} and ${other} that could be ${FAULTY[fault]}.`,
    right: 'A coil or load can be open or shorted.',
  }),
  'fault-not-possible.noLoad': ({
    name,
    one,
    other,
    fault,
    loads,
  }: Between & Faulty<'open' | 'shorted'> & { loads: readonly string[] }) => ({
    wrong: `${name} has no coil or load between ${one} and ${other} that could be ${FAULTY[fault]}.`,
    right: `Its coils and loads are ${someOf(loads) || 'none that can be named'}.`,
  }),
  'fault-not-possible.isContact': ({ name, one, other, fault }: Between & Faulty<'open' | 'shorted'>) => ({
    wrong: `${name} has no coil or load between ${one} and ${other} that could be ${FAULTY[fault]}.`,
    right: 'A contact can be welded or dirty.',
  }),
  /** `can`: what in the circuit can. */
  'fault-not-possible.part': ({
    name,
    kind,
    fault,
    can,
  }: Faulty<'blown' | 'stuck'> & { name: string; kind: string; can: readonly string[] }) => ({
    wrong: `${name} can't be ${FAULTY[fault]}: it is ${article(kind)}.`,
    right:
      fault === 'blown'
        ? `Fuses and breakers can: ${someOf(can) || 'this circuit has none'}.`
        : `Devices with moving contacts can: ${someOf(can) || 'this circuit has none'}.`,
  }),
};
