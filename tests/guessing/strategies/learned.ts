/**
 * A small model trained on everything but the conductors (softmax.ts): what things are called, what they are, how many there are, what
 * is done to what and whether words match; of each of these with each of what is asked.
 */
import type { AskedItem, Question } from '../../../shared/question.ts';
import type { Act } from '../../../shared/scenario.ts';
import {
  answered,
  type Case,
  deviceNamed,
  type Guess,
  momentOf,
  type Seen,
  type Strategy,
  thingOf,
  wordList,
  wordsOf,
} from '../seen.ts';
import { type Example, Softmax } from '../softmax.ts';

const shapeOf = (text: string): string =>
  wordList(text)
    .filter((word) => !/\d/.test(word))
    .join(' ');
const few = (count: number): string => String(Math.min(count, 6));

/** Words of a device that tell it from others, its number among them. */
const likeness = (one: string, other: string): number => {
  const words = new Set(wordList(one));
  const others = wordList(other);
  return others.length === 0 ? 0 : others.filter((word) => words.has(word)).length / others.length;
};

/** What an act is done to, in words. */
const actWords = (seen: Seen, act: Act): string => ('device' in act ? wordsOf(seen, act.device) : '');

/** What a learner of patterns sees of an item. */
function itemFeatures(seen: Seen, item: AskedItem): string[] {
  const thing = thingOf(item);
  const device = deviceNamed(seen, thing);
  const text = wordsOf(seen, thing);
  const number = Number(/\d+/.exec(thing)?.[0] ?? 0);
  const alike = seen.items.filter((each) => thingOf(each)[1] === thing[1]);
  const colour = device && 'colour' in device ? device.colour : '';
  return [
    `kind ${device?.kind}`,
    `text ${shapeOf(text)}`,
    ...wordList(text).map((word) => `word ${word}`),
    `colour ${colour}`,
    `point ${thing.split(':')[1]?.replace(/\d+$/, '') ?? ''}`,
    `terminal ${thing.split(':')[1] ?? ''}`,
    `number ${few(number)}`,
    `place ${alike.indexOf(item)} of ${few(alike.length)}`,
  ];
}

/** What a learner of patterns sees of what has been done by a moment. */
function situationFeatures(seen: Seen, after: number): string[] {
  const acts = seen.scenario.acts.slice(0, after);
  const kinds = new Map<string, number>();
  for (const { kind } of seen.devices) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  const pressed = new Set<string>();
  let ran = '';
  for (const act of acts) {
    const words = actWords(seen, act).toLowerCase();
    if (act.kind === 'press') pressed.add(act.device);
    if (act.kind === 'release') pressed.delete(act.device);
    if (act.kind === 'press' && words.startsWith('start')) ran = 'started';
    if (
      (act.kind === 'press' && /^(stop|emergency)/.test(words)) ||
      act.kind === 'trip' ||
      act.kind === 'open'
    )
      ran = 'stopped';
  }
  const described = (act: Act | undefined): string =>
    act ? `${act.kind} ${wordList(actWords(seen, act))[0] ?? ''}` : 'none';
  return [
    'any',
    `title ${shapeOf(seen.title).split(' ').slice(-3).join(' ')}`,
    `acts ${few(acts.length)}`,
    `last ${described(acts.at(-1))}`,
    `last two ${described(acts.at(-2))}, ${described(acts.at(-1))}`,
    `held ${pressed.size}`,
    `ran ${ran}`,
    `net ${acts.filter(({ kind }) => ['press', 'make', 'actuate', 'hold', 'on'].includes(kind)).length - acts.filter(({ kind }) => ['release', 'break', 'free', 'off'].includes(kind)).length}`,
    `faults ${seen.scenario.faults.map(({ kind }) => kind).join()}`,
    `waits ${acts.at(-1)?.kind === 'wait' ? acts.at(-1)!.kind : ''}`,
    ...[...kinds].map(([kind, count]) => `has ${few(count)} ${kind}`),
    `as found ${/found/.test(seen.situation)}`,
  ];
}

/** How an item and what has been done have to do with each other, in words and numbers. */
function matchFeatures(seen: Seen, item: AskedItem): string[] {
  const thing = thingOf(item);
  const text = wordsOf(seen, thing);
  const acts = seen.scenario.acts.slice(0, momentOf(item, seen.scenario));
  const number = /\d+/.exec(thing)?.[0];
  let matched = 'none';
  let same = 'none';
  let itself = 'none';
  for (const act of acts) {
    if (!('device' in act)) continue;
    const alike = likeness(text, actWords(seen, act));
    if (alike >= 0.5) matched = `${act.kind} ${alike >= 0.99}`;
    if (/\d+/.exec(act.device)?.[0] === number) same = `${act.kind} ${act.device[1]}`;
    if (act.device === thing.split(':')[0]) itself = act.kind;
  }
  const about = seen.devices
    .filter(({ kind }) => kind !== 'lamp' && kind !== 'inputs')
    .toSorted((a, b) => likeness(text, b.text ?? '') - likeness(text, a.text ?? ''))[0];
  const forms = about && 'contacts' in about ? about.contacts.map(({ form }) => form).join() : '';
  const faulty = seen.scenario.faults.some((fault) =>
    Object.values(fault).some((value) => String(value).startsWith(`${thing.split(':')[0]}`)),
  );
  return [
    `matched ${matched}`,
    `matched ${matched} ${forms}`,
    `same ${same}`,
    `itself ${itself}`,
    `faulty ${faulty}`,
  ];
}

/** Every feature of an item alone and with each of the situation's and of the matches. */
function features(seen: Seen, item: AskedItem): string[] {
  const own = itemFeatures(seen, item);
  const situation = situationFeatures(seen, momentOf(item, seen.scenario));
  const match = matchFeatures(seen, item);
  return [
    ...own,
    ...situation,
    ...match,
    ...own.flatMap((one) => [...situation, ...match].map((other) => `${one} & ${other}`)),
    ...match.flatMap((one) => situation.map((other) => `${one} & ${other}`)),
  ];
}

const optionsOf = (seen: Seen, item: AskedItem): string[][] => {
  const all = features(seen, item);
  return item.values.map((value) => all.map((feature) => `${feature} -> ${value}`));
};

function learnStates(cases: readonly Case[]): Guess {
  const examples = cases.flatMap(({ seen, sampled: { right } }) =>
    seen.items.map(
      (item): Example => ({
        options: optionsOf(seen, item),
        right: 'states' in right ? item.values.indexOf(right.states[item.item]!) : 0,
      }),
    ),
  );
  const model = new Softmax().learn(examples);
  return (seen) => answered(seen, (item) => item.values[model.best(optionsOf(seen, item))]!);
}

/** A pair of terminals among others, and what is wanted. */
function choiceOptions(seen: Seen): string[][] {
  const { choices, wanted, devices } = seen;
  const states = wanted.map(({ state }) => state).join();
  const acts = wanted
    .map((each) => each.acts.map((act) => `${act.kind} ${'device' in act ? act.device[1] : ''}`).join(' '))
    .join('; ');
  const device = (terminal: string): string => terminal.split(':')[0]!;
  const leg = (terminal: string): string => terminal.at(-1)!;
  return choices.map((pair, place) => {
    const [first, second] = pair;
    const others = choices.filter((_, index) => index !== place);
    const acted = wanted.some((each) =>
      each.acts.some((act) => 'device' in act && act.device === device(first)),
    );
    const described = [
      `place ${place}`,
      `legs ${leg(first)}${leg(second)}`,
      `one device ${device(first) === device(second)}`,
      `others on the device ${others.filter(([one]) => device(one) === device(first)).length}`,
      `terminals shared ${others.flat().filter((each) => pair.includes(each)).length}`,
      `same pole ${others.filter(([one]) => one.slice(0, -1) === first.slice(0, -1)).length}`,
      `pole ${first.split(':')[1]?.[0]}`,
      `acted ${acted}`,
      `kind ${devices.find(({ name }) => name === device(first))?.kind}`,
      `number ${device(first)}`,
    ];
    const around = ['any', `wanted ${states}`, `acts ${acts}`, `choices ${choices.length}`];
    return described.flatMap((one) => [
      ...around.map((other) => `${one} & ${other}`),
      ...described.map((other) => `${one} & ${other}`),
      ...described.map((other) => `${one} & ${other} & ${states}`),
    ]);
  });
}

function learnChoices(cases: readonly Case[]): Guess {
  const model = new Softmax().learn(
    cases.map(({ seen, sampled: { right } }) => ({
      options: choiceOptions(seen),
      right: 'choice' in right ? right.choice! : 0,
    })),
  );
  return (seen) => ({ kind: 'wiring', choice: model.best(choiceOptions(seen)) });
}

function wholeOf({ supplies, points }: Seen): number {
  const named = supplies.find(({ name }) => points?.some((point) => point.startsWith(`${name}:`)));
  return (named ?? supplies[0]!).volts;
}

/** What a reading may be by what is told: nothing, a supply's voltage, a reading that is told, what that leaves, either way round. */
function readingsOf(seen: Seen): { readonly named: string; readonly volts: number }[] {
  const whole = wholeOf(seen);
  const told = [...seen.situation.matchAll(/shows ([\d.]+) V/g)].map(([, volts]) => Number(volts));
  const one = [
    { named: 'whole', volts: whole },
    ...seen.supplies.filter(({ volts }) => volts !== whole).map(({ volts }) => ({ named: 'other', volts })),
    ...told.map((volts) => ({ named: 'told', volts })),
    ...told.map((volts) => ({ named: 'left', volts: whole - volts })),
    ...(told.length > 1 ? [{ named: 'between', volts: told[0]! - told[1]! }] : []),
  ];
  return [
    { named: 'nothing', volts: 0 },
    ...one.flatMap(({ named, volts }) => [
      { named, volts },
      { named: `-${named}`, volts: -volts },
    ]),
  ];
}

function readingFeatures(seen: Seen): string[] {
  const points = seen.points ?? ['', ''];
  const kinds = points.map((point) => deviceNamed(seen, point)?.kind ?? 'supply');
  const terminals = points.map((point) => point.split(':')[1]!);
  const acted = points.map((point) =>
    seen.scenario.acts
      .filter((act) => 'device' in act && act.device === point.split(':')[0])
      .map(({ kind }) => kind)
      .join(),
  );
  const faulty = seen.scenario.faults
    .map((fault) => `${fault.kind} ${points.some((point) => Object.values(fault).includes(point))}`)
    .join();
  const described = [
    `kinds ${kinds.join()}`,
    `terminals ${terminals.join()}`,
    `kinds ${kinds.join()} terminals ${terminals.join()}`,
    `one device ${points[0]!.split(':')[0] === points[1]!.split(':')[0]}`,
    `acted ${acted.join(' / ')}`,
    `faulty ${faulty}`,
    `supplies ${seen.supplies.map(({ name }) => points.some((point) => point.startsWith(`${name}:`))).join()}`,
    `volts ${seen.supplies.map(({ volts }) => volts).join()}`,
    `numbers ${points.map((point) => /\d+/.exec(point)?.[0] ?? '').join()}`,
  ];
  const situation = situationFeatures(seen, seen.scenario.acts.length);
  return [
    ...described,
    ...described.flatMap((one) => [...situation, ...described].map((other) => `${one} & ${other}`)),
  ];
}

function learnReadings(cases: readonly Case[]): Guess {
  const optionsOf = (seen: Seen): string[][] => {
    const all = readingFeatures(seen);
    return readingsOf(seen).map(({ named }) => [
      `always -> ${named}`,
      ...all.map((feature) => `${feature} -> ${named}`),
    ]);
  };
  const examples = cases.flatMap(({ seen, sampled: { right, question } }): Example[] => {
    const volts = 'volts' in right ? (right.volts ?? 0) : 0;
    const tolerance = question.kind === 'meter' ? question.tolerance : 0;
    const found = readingsOf(seen).findIndex((each) => Math.abs(each.volts - volts) <= tolerance);
    return found < 0 ? [] : [{ options: optionsOf(seen), right: found }];
  });
  const model = new Softmax().learn(examples);
  return (seen) => ({ kind: 'meter', volts: readingsOf(seen)[model.best(optionsOf(seen))]!.volts });
}

export const learned: Strategy = {
  id: 'learned',
  learn(kind: Question['kind'], cases) {
    if (kind === 'wiring') return learnChoices(cases);
    return kind === 'meter' ? learnReadings(cases) : learnStates(cases);
  },
};
