/**
 * Pairs of points worth measuring between, each for another thing to know about what a meter shows. Which reading it will be is drawn
 * before the points are: what is read most often on a drawing, nothing and the whole voltage, would be guessed.
 */
import type { Circuit, TerminalRef } from '../../../../shared/circuit.ts';
import type { Fault, Scenario } from '../../../../shared/scenario.ts';
import { anatomyOf, circuitView, deviceOf } from '../../../circuit/index.ts';
import type { Random } from '../../../generator/index.ts';
import { type Machine, meterIn } from '../../../solver/index.ts';
import { certain, rightSolver } from '../../solving.ts';
import { dirtyContacts, knownReadings } from './dirty.ts';
import { turnedContacts } from './turned.ts';

export interface MeterPoints {
  readonly circuit: Circuit;
  readonly scenario: Scenario;
  readonly points: [TerminalRef, TerminalRef];
  readonly tolerance: number;
}

type Pair = readonly [TerminalRef, TerminalRef];
interface Measured {
  readonly pair: Pair;
  /** Readings that look alike on a meter are one. */
  readonly shown: number;
}

/** Of the largest supply's voltage; a reading is right within it. */
const TOLERANCE = 0.05;
/** Share of questions with contacts that take a part of the voltage. */
const DIRTY_SHARE = 0.95;
/** How often a circuit in which fewer than two contacts can be soiled is left for another. */
const FEW_REFUSED = 0.8;
/** Share of questions that measure at one of those contacts, where there are any. */
const AT_DIRT = 0.95;
/** Different readings that a sort of pair has to offer, or it is guessed. */
const FEWEST_READINGS = 3;

/** Whether it is known without the drawing what a point has: a supply's pole, what a supply is fed through, a load's end at its return. */
function isPlain({ plan }: Machine, circuit: Circuit, point: string): boolean {
  const device = deviceOf(circuit, nameOf(point));
  if (!device) return true;
  const { mechanisms, loads } = anatomyOf(device);
  if (mechanisms.some(({ drive }) => drive === 'feed')) return true;
  const node = plan.nodeOf.get(point);
  return loads.length > 0 && plan.supplies.some(({ poles }) => poles.at(-1)!.node === node);
}

const nameOf = (point: string): string => point.split(':')[0]!;
/** Both ends of a contact or a load. */
const acrossOne = ([first, second]: Pair): boolean => nameOf(first) === nameOf(second);
const atSupply = (pair: Pair): boolean => pair.some((point) => !point.startsWith('-'));
const anywhere = (pair: Pair): boolean => !acrossOne(pair) && !atSupply(pair);
const CLEAN_SORTS = [acrossOne, atSupply, anywhere];

/** Chooses where the leads go, after some contacts have been put out of order. */
export function proposePoints(drawn: Circuit, scenario: Scenario, random: Random): MeterPoints | undefined {
  const circuit = turnedContacts(drawn, random.child('turned'));
  const solver = rightSolver();
  const clean = solver.solve(circuit, scenario)!;
  const soiled = random.chance(DIRTY_SHARE);
  const faults: readonly Fault[] =
    scenario.faults.length === 0 && soiled ? dirtyContacts(circuit, clean, random.child('dirty')) : [];
  // With fewer than two there are few readings to choose from.
  if (soiled && faults.length < 2 && random.chance(FEW_REFUSED)) return undefined;
  const measured = faults.length > 0 ? { ...scenario, faults: [...faults] } : scenario;
  const { machine, state } = solver.solve(circuit, measured)!;
  if (!certain(solver.machine(circuit, measured), measured)) return undefined;
  const volts = Math.max(...circuit.supplies.map((supply) => supply.volts));
  const tolerance = Math.round(TOLERANCE * volts * 100) / 100;
  const read = meterIn(machine, state);
  const { nodeOf } = machine.plan;
  const told = knownReadings(measured, { machine, state }).map(({ points }) => points);
  /** Whether it is between the two conductors of a reading that is told. */
  const isTold = (pair: Pair): boolean =>
    told.some((points) => pair.every((end) => points.some((point) => nodeOf.get(point) === nodeOf.get(end))));
  const alternating = circuit.supplies.every(({ current }) => current !== 'DC');
  const ends = [...circuitView(circuit).wired];
  const measuredOn = (suits: (pair: Pair) => boolean): Measured[] =>
    ends.flatMap((first) =>
      ends.flatMap((second): Measured[] => {
        const pair: Pair = [first, second];
        if (nodeOf.get(first) === nodeOf.get(second) || !suits(pair) || isTold(pair)) return [];
        const { volts: shown, floating } = read(first, second);
        if (floating) return [{ pair, shown: 0 }];
        // A reading that could be argued about: something between nothing and a part of the voltage.
        if (Math.abs(shown) > tolerance / 5 && Math.abs(shown) <= 2 * tolerance) return [];
        return [{ pair, shown: Math.round((alternating ? Math.abs(shown) : shown) / tolerance / 2) }];
      }),
    );
  const dirtyEnds = new Set(
    faults.flatMap((fault) => (fault.kind === 'dirty' ? [fault.from, fault.to] : [])),
  );
  const atDirt = (pair: Pair): boolean =>
    pair.some((end) => dirtyEnds.has(end)) && !pair.some((end) => isPlain(machine, circuit, end));
  // At a contact that takes a part of the voltage any reading may come; elsewhere hardly another than nothing or the whole.
  const sorts = random.chance(AT_DIRT)
    ? [atDirt, ...random.shuffle(CLEAN_SORTS)]
    : [...random.shuffle(CLEAN_SORTS), atDirt];
  for (const sort of sorts) {
    const pairs = measuredOn(sort);
    const readings = [...new Set(pairs.map(({ shown }) => shown))];
    if (readings.length < FEWEST_READINGS) continue;
    const shown = random.pick(readings);
    const { pair } = random.pick(pairs.filter((each) => each.shown === shown));
    return { circuit, scenario: measured, points: [...pair], tolerance };
  }
  return undefined;
}
