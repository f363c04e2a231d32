/** A contact taken out of a drawing, and what it did there: the makings of a wiring question. */
import type { Circuit, Path, TerminalRef } from '../../../../shared/circuit.ts';
import type { QuestionOf } from '../../../../shared/question.ts';
import type { Scenario } from '../../../../shared/scenario.ts';
import {
  anatomyOf,
  circuitView,
  contactOf,
  deviceOf,
  entryOf,
  exitOf,
  traitsOf,
} from '../../../circuit/index.ts';
import type { Draft, Random } from '../../../generator/index.ts';
import { certain, type Solve, type Solver } from '../../solving.ts';
import { completed, loadState, satisfied } from './choices.ts';

type Wiring = QuestionOf<'wiring'>;
type Pair = [TerminalRef, TerminalRef];

/** Relays among the choices, each with both contacts of a pole. */
const MOST_RELAYS = 3;
const FEWEST_RELAYS = 2;
const MOST_WANTED = 3;
/** Share of questions in which nothing is wanted of the start, where there is enough else. */
const LATER = 0.6;

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
      const contact = contactOf(circuit, step);
      const load = steps
        .slice(at + 1)
        .map((later) => loads.find((id) => id === later.device || id === `${later.device}:${later.enter}`))
        .find((id) => id !== undefined);
      if (!relay || !contact || contact.main || load === undefined) return [];
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

/** A pole as it is offered: its break contact and its make contact, so that neither the relay nor the leg is told by the choices. */
type Offered = readonly [Pair, Pair];

/** The poles of a relay: of contactors, whose contacts are apart, a break and a make contact are taken for one. */
function polesOf(circuit: Circuit, name: string): Offered[] {
  const contacts = anatomyOf(deviceOf(circuit, name)!).contacts.filter(({ main }) => !main);
  const pair = ({ from, to }: { from: string; to: string }): Pair => [`${name}:${from}`, `${name}:${to}`];
  const breaks = contacts.filter(({ form }) => form === 'break');
  const makes = contacts.filter(({ form }) => form === 'make');
  return breaks.flatMap((one, index): Offered[] => {
    const other = one.changeover ? makes.find(({ pole }) => pole === one.pole) : makes[index];
    return other ? [[pair(one), pair(other)]] : [];
  });
}

/** With all the poles that a plug-in relay may have: how many there are would tell which relay has lost one. */
const withAllPoles = (circuit: Circuit, name: string): Circuit => ({
  ...circuit,
  devices: circuit.devices.map((device) =>
    device.name === name && 'poles' in device
      ? { ...device, poles: traitsOf(device).mostPoles ?? device.poles }
      : device,
  ),
});

/** One of the poles of a relay that nothing is wired to. */
function freePole(circuit: Circuit, name: string, random: Random): Offered | undefined {
  const { wired } = circuitView(circuit);
  const free = polesOf(circuit, name).filter((offered) =>
    offered.flat().every((terminal) => !wired.has(terminal)),
  );
  return free.length > 0 ? random.pick(free) : undefined;
}

/** States of the load at the start and after each act, as act lists that show both of two states, in the order done. */
function wantedOf(
  circuit: Circuit,
  scenario: Scenario,
  load: string,
  solve: Solve,
  random: Random,
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
  // What is so at the start tells which leg it is, wherever relays begin at rest.
  const later = changes.length > 2 && random.chance(LATER) ? changes.slice(1) : changes;
  return later.slice(0, MOST_WANTED) as Wiring['wanted'];
}

export function proposeWiring(draft: Draft, random: Random, { solve, machine }: Solver): Wiring | undefined {
  const { circuit, scenario, family } = draft;
  const loads = [...draft.lamps, ...draft.inputs];
  if (!certain(machine(circuit, scenario), scenario)) return undefined;
  for (const hop of random.shuffle(hopsOf(circuit, loads))) {
    const wanted = wantedOf(circuit, scenario, hop.load, solve, random);
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
    const works = (on: Circuit, pair: Pair): boolean => {
      const trial = { ...base, circuit: on, choices: [pair, pair] };
      return satisfied(trial, completed(trial, 0), solve);
    };
    if (!works(open, hop.pair)) continue;
    if (satisfied(base, open, solve)) continue;
    const found = withOthers(base, name(hop.pair), draft.relays, works, random);
    if (found) return found;
  }
  return undefined;
}

const name = ([first]: Pair): string => first.split(':')[0]!;

/** The question with a free pole of the right relay and one each of others: exactly one contact of them all does what is wanted. */
function withOthers(
  base: Omit<Wiring, 'choices'>,
  own: string,
  relays: readonly string[],
  works: (circuit: Circuit, pair: Pair) => boolean,
  random: Random,
): Wiring | undefined {
  let { circuit } = base;
  const choices: Pair[] = [];
  let offered = 0;
  for (const relay of [own, ...random.shuffle(relays.filter((each) => each !== own))]) {
    if (offered === MOST_RELAYS) break;
    const grown = withAllPoles(circuit, relay);
    const pole = freePole(grown, relay, random);
    const working = pole?.filter((pair) => works(grown, pair)).length;
    if (!pole || working !== (relay === own ? 1 : 0)) {
      if (relay === own) return undefined;
      continue;
    }
    circuit = grown;
    choices.push(...pole);
    offered++;
  }
  return offered < FEWEST_RELAYS ? undefined : { ...base, circuit, choices: random.shuffle(choices) };
}
