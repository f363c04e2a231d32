/** A contact taken out of a drawing, and what it did there: the makings of a wiring question. */
import type { Circuit, Path, TerminalRef } from '../../../../shared/circuit.ts';
import type { QuestionOf } from '../../../../shared/question.ts';
import type { Scenario } from '../../../../shared/scenario.ts';
import { anatomyOf, circuitView, deviceOf, entryOf, exitOf } from '../../../circuit/index.ts';
import type { Draft, Random } from '../../../generator/index.ts';
import { certain, rightSolver, type Solve } from '../../solving.ts';
import { completed, loadState, satisfied } from './choices.ts';

type Wiring = QuestionOf<'wiring'>;
type Pair = [TerminalRef, TerminalRef];

const MOST_CHOICES = 5;
const FEWEST_CHOICES = 3;
const MOST_WANTED = 3;

interface Hop {
  readonly path: number;
  readonly step: number;
  readonly pair: Pair;
  readonly load: string;
}

/** Relay contacts in the middle of a path that goes on to a lamp or an input. */
function hopsOf(circuit: Circuit, loads: readonly string[]): Hop[] {
  return circuit.paths.flatMap(({ steps }, path) =>
    steps.flatMap((step, at): Hop[] => {
      const device = deviceOf(circuit, step.device);
      if (at === 0 || at === steps.length - 1 || step.leave === undefined || !device) return [];
      const relay = anatomyOf(device).mechanisms.some(({ drive }) => drive !== 'act' && drive !== 'feed');
      const contact = anatomyOf(device).contacts.some(
        ({ from, to, main }) => !main && [from, to].includes(step.enter) && [from, to].includes(step.leave!),
      );
      const load = steps
        .slice(at + 1)
        .map((later) => loads.find((id) => id === later.device || id === `${later.device}:${later.enter}`))
        .find((id) => id !== undefined);
      if (!relay || !contact || load === undefined) return [];
      return [{ path, step: at, pair: [entryOf(step), exitOf(step)], load }];
    }),
  );
}

/** The circuit without the two wires at a hop. What is left of its path stays drawn where it is more than one stop. */
function without(circuit: Circuit, { path, step }: Hop): Circuit {
  const paths = circuit.paths.flatMap((each, index): Path[] =>
    index === path
      ? [each.steps.slice(0, step), each.steps.slice(step + 1)].flatMap((steps) =>
          steps.length >= 2 ? [{ ...each, steps }] : [],
        )
      : [each],
  );
  return { ...circuit, paths };
}

/** Pairs of terminals of a device's poles: each contact, and the two legs of a changeover. */
function pairsOf(circuit: Circuit, name: string): Pair[] {
  const { contacts } = anatomyOf(deviceOf(circuit, name)!);
  const ref = (terminal: string): TerminalRef => `${name}:${terminal}`;
  const legs = contacts.flatMap(({ pole, changeover, form, to }) => {
    const other = contacts.find((each) => each.pole === pole && each.form === 'make');
    return changeover && form === 'break' && other ? [[ref(to), ref(other.to)] as Pair] : [];
  });
  return [...contacts.filter(({ main }) => !main).map(({ from, to }): Pair => [ref(from), ref(to)]), ...legs];
}

/** States of the load at the start and after each act, as act lists that show both of two states, in the order done. */
function wantedOf(
  circuit: Circuit,
  scenario: Scenario,
  load: string,
  solve: Solve,
): Wiring['wanted'] | undefined {
  const all = Array.from({ length: scenario.acts.length + 1 }, (_, after) => {
    const acts = scenario.acts.slice(0, after);
    const standpoint = solve(circuit, { ...scenario, acts });
    return { acts, load, state: standpoint && loadState(standpoint, load) };
  });
  const plain = all.filter(
    ({ state }) => state === 'lit' || state === 'dark' || state === '0' || state === '1',
  );
  const changes = plain.filter(({ state }, index) => index === 0 || state !== plain[index - 1]!.state);
  if (changes.length < 2) return undefined;
  return changes.slice(0, MOST_WANTED) as Wiring['wanted'];
}

export function proposeWiring(draft: Draft, random: Random): Wiring | undefined {
  const { circuit, scenario, family } = draft;
  const loads = [...draft.lamps, ...draft.inputs];
  const { solve, machine } = rightSolver();
  if (!certain(machine(circuit, scenario), scenario)) return undefined;
  for (const hop of random.shuffle(hopsOf(circuit, loads))) {
    const wanted = wantedOf(circuit, scenario, hop.load, solve);
    if (!wanted) continue;
    const open = without(circuit, hop);
    const [first, second] = circuit.paths[hop.path]!.steps.slice(hop.step - 1, hop.step + 2).filter(
      (_, at) => at !== 1,
    );
    const base: Omit<Wiring, 'choices'> = {
      kind: 'wiring',
      circuit: open,
      scenario: { ...scenario, acts: [] },
      family,
      ends: [exitOf(first!), entryOf(second!)],
      wanted,
    };
    const works = (pair: Pair): boolean => {
      const trial = { ...base, choices: [pair, pair] };
      return satisfied(trial, completed(trial, 0), solve);
    };
    if (!works(hop.pair)) continue;
    const { wired } = circuitView(open);
    const name = hop.pair[0].split(':')[0]!;
    const same = (pair: Pair): boolean => [...pair].sort().join() === [...hop.pair].sort().join();
    const own = pairsOf(circuit, name).filter((pair) => !same(pair));
    const nearest = own.filter((pair) => pair.some((terminal) => hop.pair.includes(terminal)));
    const others = draft.relays
      .filter((relay) => relay !== name)
      .flatMap((relay) => pairsOf(circuit, relay))
      .filter((pair) => pair.every((terminal) => !wired.has(terminal)));
    const wrong = [
      ...random.shuffle(nearest),
      ...random.shuffle([...own.filter((pair) => !nearest.includes(pair)), ...others]),
    ]
      .filter((pair) => !works(pair))
      .slice(0, MOST_CHOICES - 1);
    if (wrong.length + 1 < FEWEST_CHOICES) continue;
    return { ...base, choices: random.shuffle([hop.pair, ...wrong]) };
  }
  return undefined;
}
