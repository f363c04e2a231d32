/** What can be wrong with the circuits, drawings and questions of a bank. */
import { tellSaid } from '../../problems.ts';
import { say } from '../../statement.ts';
import { type AnswerSaid, answers } from '../answers.ts';
import { type ExplainingSaid, explaining } from '../questions/explaining.ts';
import { speech } from '../speech.ts';
import { asMeant, type Slip, shown, someOf } from './parts.ts';
import { type RuleProblemSaid, ruleProblems } from './rules.ts';

/** A drawing, or a kind of question. */
interface OfBlock {
  readonly of: string;
  readonly keys: readonly string[];
}
const block = (of: string): string => (of === 'drawing' ? 'a drawing' : `a ${of} question`);
const keysOf = ({ of, keys }: OfBlock): string => `The keys of ${block(of)} are ${speech.and(keys)}.`;

/** What something asked about has to be. */
const ASKED = {
  lamp: 'a lamp (or sounder, valve, motor) of this circuit',
  input: 'an input of this circuit',
  relay: 'a relay, contactor or timer of this circuit',
  terminal: 'a terminal of this circuit',
  lampOrInput: 'a lamp or input of this circuit',
  lampRelayOrInput: 'a lamp, relay or input of this circuit',
};
export type AskedThing = keyof typeof ASKED;

const AFTER = 'Write it like -H1 after 2: how -H1 stands when two acts have been done, 0 for the start.';
const PAIR = 'Write two of them with a blank between: -K3:A1 -K3:A2.';

/** What is answered where it has no designation. */
const ANSWERED: Readonly<Record<string, string>> = { volts: 'the meter', choice: 'the wiring' };

interface States {
  readonly item: string;
  readonly states: readonly string[];
}
const states = ({ item, states: words }: States): string => `It is ${speech.or(words)}: ${item} ${words[0]}.`;

const settings = (names: readonly string[]): string =>
  `Its settings are ${speech.and(names.map((name) => `${name}=…`))}, without blanks in them.`;

export const bankBlockProblems = {
  'bank-unclosed-block': ({ fence }: { fence: string }) => ({
    wrong: 'This block has no end.',
    right: `End it with a line ${fence} of its own.`,
  }),
  'bank-unknown-block': ({ word, kinds, ...slip }: Slip & { word: string; kinds: readonly string[] }) => ({
    wrong: `${shown(word)} is no kind of block.`,
    right: asMeant(slip, `There are: ${kinds.join(', ')}. Write it directly after the fence.`),
  }),
  'bank-unknown-block.none': ({ kinds }: { kinds: readonly string[] }) => ({
    wrong: 'What kind of block is this?',
    right: `There are: ${kinds.join(', ')}. Write it directly after the fence.`,
  }),
  'bank-setting': ({ word, kind, names }: { word: string; kind: string; names: readonly string[] }) => ({
    wrong: `${shown(word)} is no setting of a ${kind}.`,
    right: settings(names),
  }),
  'bank-setting.twice': ({ name, names }: { name: string; names: readonly string[] }) => ({
    wrong: `${shown(name)} is set already.`,
    right: settings(names),
  }),
  'bank-missing-setting': ({
    kind,
    name,
    needed,
  }: {
    kind: string;
    name: string;
    needed: readonly string[];
  }) => ({
    wrong: `This ${kind} has no ${name}.`,
    right: `Write ${name}=… on the line of the fence: \`\`\`${kind} ${needed.map((each) => `${each}=…`).join(' ')}.`,
  }),
  'bank-field': {
    wrong: 'This line belongs to no key.',
    right: 'Begin a line with its key: do: press -S1.',
  },
  'bank-field.noKey': (of: OfBlock) => ({
    wrong: 'This line has no key.',
    right: `${keysOf(of)} Indent what belongs to the key above.`,
  }),
  'bank-unknown-key': ({ key, meant, ...of }: OfBlock & Slip & { key: string }) => ({
    wrong: `${shown(key)} is no key of ${block(of.of)}.`,
    right: asMeant({ meant }, keysOf(of)),
  }),
  'bank-repeated-key': ({ key }: { key: string }) => ({
    wrong: `The key ${key} is there twice.`,
    right: 'Put both into one.',
  }),
  'bank-repeated-key.circuit': ({ key }: { key: string }) => ({
    wrong: `The circuit is one from above; its ${key} can't be here.`,
    right: 'Leave this out, or leave out circuit=… on the line of the fence.',
  }),
  'bank-missing-key': ({ kind, key }: { kind: string; key: string }) => ({
    wrong: `This ${kind} has no ${key}.`,
    right: `Write ${key}: … on a line of its own.`,
  }),
  'bank-value.name': ({ name, of }: { name: string; of: 'circuit' | 'question' }) => ({
    wrong: `${shown(name)} can't be the name of a ${of}.`,
    right: 'A name has small letters, digits and hyphens: vent-fan-1.',
  }),
  'bank-repeated-name.block': ({ name, of }: { name: string; of: 'circuit' | 'question' }) => ({
    wrong: `There is a ${of} ${name} in this topic already.`,
    right: 'Give one of them another name.',
  }),
  'bank-unknown-circuit': ({ name, names, ...slip }: Slip & { name: string; names: readonly string[] }) => ({
    wrong: `There is no circuit ${shown(name)} above this block.`,
    right:
      names.length === 0
        ? 'Put it before this block: ```circuit id=….'
        : asMeant(slip, `There are: ${someOf(names)}.`),
  }),
  'bank-value.kind': ({ word, kinds, ...slip }: Slip & { word: string; kinds: readonly string[] }) => ({
    wrong: `${shown(word)} is no kind of question.`,
    right: asMeant(slip, `There are: ${kinds.join(', ')}.`),
  }),
  'bank-value.remark': ({ most }: { most: number }) => ({
    wrong: `This is too long: at most ${most} characters.`,
    right: 'Shorten it.',
  }),
  'bank-value.question': {
    wrong: 'This question is larger than a question may be.',
    right: 'At most 24 things are asked in one question, and at most 200 acts are done.',
  },
  'bank-value.start': ({ word }: { word: string }) => ({
    wrong: `${shown(word)} is no way to start.`,
    right:
      'It is live (supplies on, isolators and breakers closed; so it is when start is left out) or dead (all of them open, as drawn).',
  }),
  'bank-too-large.acts': ({ acts, most }: { acts: number; most: number }) => ({
    wrong: `There are ${acts} acts; in a bank at most ${most} are done one after another.`,
    right: 'Leave some out.',
  }),
  'bank-too-large.devices': ({ devices, most }: { devices: number; most: number }) => ({
    wrong: `There are ${devices} devices; a circuit in a bank has at most ${most}.`,
    right: 'Show a part of it.',
  }),

  'bank-rules': ({ rule }: { rule: string }) => ({
    wrong: `The rule ${rule} is off, and nothing in this circuit breaks it.`,
    right: 'Leave it out.',
  }),
  'bank-rules.how': ({ rules }: { rules: readonly string[] }) => ({
    wrong: 'Which drawing rules does this circuit break, and why?',
    right: `Write it like: off ${rules[0]} because the lesson shows this mistake. The rules are ${rules.join(', ')}.`,
  }),
  'bank-rules.unknown': ({ rule, rules, ...slip }: Slip & { rule: string; rules: readonly string[] }) => ({
    wrong: `There is no drawing rule ${shown(rule)}.`,
    right: asMeant(slip, `The rules are ${speech.and(rules)}.`),
  }),
  /** A drawing rule that a lesson may break on purpose; its code is the rule's. */
  'bank-rules.broken': ({ rule, broken }: { rule: string; broken: RuleProblemSaid }) => {
    const { wrong, right } = tellSaid(ruleProblems, broken);
    return {
      wrong,
      right: `${right} (Where a lesson shows this on purpose, write: rules: off ${rule} because …)`,
    };
  },

  'bank-unknown-item': ({
    item,
    what,
    names,
    ...slip
  }: Slip & { item: string; what: AskedThing; names: readonly string[] }) => ({
    wrong: `${shown(item)} is not ${ASKED[what]}.`,
    right:
      names.length === 0 ? 'There is none in this circuit.' : asMeant(slip, `There are: ${someOf(names)}.`),
  }),
  'bank-unknown-item.notAsked': ({ item, asked }: { item: string; asked: readonly string[] }) => ({
    wrong: `${shown(item)} is not asked here.`,
    right: `Asked are ${someOf(asked)}; write each with its state.`,
  }),
  'bank-unknown-item.acts': ({ acts }: { acts: number }) => ({
    wrong: `There are only ${acts} acts in do.`,
    right: AFTER,
  }),
  'bank-unknown-item.after': ({ item }: { item: string }) => ({
    wrong: `${shown(item)} doesn't say after how many acts.`,
    right: AFTER,
  }),
  'bank-unknown-item.terminal': ({ item }: { item: string }) => ({
    wrong: `${shown(item)} is not a terminal of this circuit.`,
    right: PAIR,
  }),
  'bank-unknown-item.choice': ({ pair, pairs }: { pair: string; pairs: readonly string[] }) => ({
    wrong: `${shown(pair)} is none of the choices.`,
    right: `The choices are ${speech.or(pairs)}.`,
  }),
  'bank-field.pair': ({ text }: { text: string }) => ({
    wrong: `${shown(text)} is not two terminals.`,
    right: PAIR,
  }),
  'bank-field.nothingAsked': {
    wrong: 'Nothing is asked here.',
    right: 'Write what is asked: asked: -H1.',
  },
  'bank-field.tolerance': {
    wrong: 'A tolerance is above 0.',
    right: 'Write it like 0.5 V.',
  },
  'bank-field.volts': ({ text }: { text: string }) => ({
    wrong: `${shown(text)} is no voltage.`,
    right: 'Write it like 0.5 V.',
  }),
  'bank-field.reading': ({ text }: { text: string }) => ({
    wrong: `${shown(text)} is no voltage.`,
    right: 'Write it like 24 V; or nothing, where the points have no common reference.',
  }),
  'bank-field.lines': (under: { key: string; lines: number; least: number; most: number }) => ({
    wrong: `There are ${under.lines} lines under ${under.key}.`,
    right: `Write ${under.least} to ${under.most}, each on a line of its own, indented.`,
  }),
  'bank-field.wanted': ({ text }: { text: string }) => ({
    wrong: `${shown(text)} says no state of a load.`,
    right: 'Write it like -H1 lit after press -S1, or -H1 dark at first.',
  }),
  'bank-repeated-item': ({ item }: { item: string }) => ({
    wrong: `${shown(item)} is there twice.`,
    right: 'Leave one out.',
  }),
  'bank-repeated-item.answered': ({ item }: { item: string }) => ({
    wrong: `${shown(item)} is answered twice.`,
    right: 'Leave one out.',
  }),
  'bank-unknown-state': ({ state, ...of }: States & { state: string }) => ({
    wrong: `${shown(state)} is no state of ${of.item}.`,
    right: states(of),
  }),
  'bank-unknown-state.none': (of: States) => ({
    wrong: `What is the state of ${of.item}?`,
    right: states(of),
  }),
  'bank-unknown-state.wanted': ({ state, item, states: words }: States & { state: string }) => ({
    wrong: `${shown(state)} is no state of ${item}.`,
    right: `It is ${speech.or(words)}.`,
  }),
  'bank-missing-answer': ({ items }: { items: readonly string[] }) => ({
    wrong: `The answer leaves out ${someOf(items)}.`,
    right: 'Answer everything that is asked.',
  }),

  'bank-too-large.unconfirmed': {
    wrong: 'The solver has been asked so much in this file that this is left unconfirmed.',
    right: 'Correct what is told above, or divide the topic.',
  },
  /** `of`: as its author wrote it, or `volts`, `choice`. `given`: absent where nothing is. */
  'bank-not-confirmed': ({
    of,
    given,
    right,
    why,
  }: {
    of: string;
    given?: AnswerSaid | undefined;
    right: AnswerSaid;
    why: readonly ExplainingSaid[];
  }) => ({
    wrong: `The solver doesn't confirm "${given ? say(answers, given) : 'nothing'}" for ${ANSWERED[of] ?? of}: it says "${say(answers, right)}".`,
    right: `Why: ${why.map((each) => say(explaining, each)).join(' ')}`,
  }),
};
