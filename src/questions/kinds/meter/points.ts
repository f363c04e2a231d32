/**
 * Pairs of points worth measuring between, each for another thing to know about what a meter shows. Which reading it will be is drawn
 * before the points are: what is read most often on a drawing, nothing and the whole voltage, would be guessed.
 */
import type { Circuit, Device, TerminalRef } from '../../../../shared/circuit.ts';
import type { Fault, Scenario } from '../../../../shared/scenario.ts';
import { anatomyOf, circuitView, deviceOf, readAs } from '../../../circuit/index.ts';
import type { Random } from '../../../generator/index.ts';
import { type Machine, meterIn } from '../../../solver/index.ts';
import { certain, type Solver } from '../../solving.ts';
import { dirtyContacts, knownReadings } from './dirty.ts';
import { turnedContacts } from './turned.ts';

export interface MeterPoints {
  readonly circuit: Circuit;
  readonly scenario: Scenario;
  readonly points: [TerminalRef, TerminalRef];
  readonly tolerance: number;
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

/** A terminal that a lead can be put on. */
interface Point {
  readonly terminal: TerminalRef;
  readonly device: string;
  readonly node: number;
  readonly ofSupply: boolean;
  /** What it has is known without the drawing: a supply's pole, what a supply is fed through, an input, a load's end at its return. */
  readonly plain: boolean;
  /** At a contact that takes a part of the voltage. */
  readonly dirty: boolean;
}

type Ends = readonly [Point, Point];
interface Measured {
  readonly ends: Ends;
  /** Readings that look alike on a meter are one. */
  readonly shown: number;
}

function isPlain({ plan }: Machine, device: Device | undefined, node: number): boolean {
  if (!device) return true;
  const { mechanisms, loads } = anatomyOf(device);
  if (mechanisms.some(({ drive }) => drive === 'feed')) return true;
  if (loads.some(({ role }) => readAs(role) === 'input')) return true;
  return loads.length > 0 && plan.supplies.some(({ poles }) => poles.at(-1)!.node === node);
}

function pointsOf(machine: Machine, circuit: Circuit, faults: readonly Fault[]): Point[] {
  const soiled = new Set(faults.flatMap((fault) => (fault.kind === 'dirty' ? [fault.from, fault.to] : [])));
  return [...circuitView(circuit).wired].map((terminal) => {
    const device = terminal.split(':')[0]!;
    const node = machine.plan.nodeOf.get(terminal)!;
    const plain = isPlain(machine, deviceOf(circuit, device), node);
    const ofSupply = !terminal.startsWith('-');
    return { terminal, device, node, ofSupply, plain, dirty: soiled.has(terminal) };
  });
}

/** Both ends of a contact or a load. */
const acrossOne = ([first, second]: Ends): boolean => first.device === second.device;
const atSupply = (ends: Ends): boolean => ends.some(({ ofSupply }) => ofSupply);
const anywhere = (ends: Ends): boolean => !acrossOne(ends) && !atSupply(ends);
const CLEAN_SORTS = [acrossOne, atSupply, anywhere];
const atDirt = (ends: Ends): boolean =>
  ends.some(({ dirty }) => dirty) && ends.every(({ plain }) => !plain) && !acrossOne(ends);

/** Chooses where the leads go, after some contacts have been put out of order. */
export function proposePoints(
  drawn: Circuit,
  scenario: Scenario,
  random: Random,
  solver: Solver,
): MeterPoints | undefined {
  const circuit = turnedContacts(drawn, random.child('turned'));
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
  const told = knownReadings(measured, { machine, state }).map(({ points }) =>
    points.map((point) => nodeOf.get(point)!),
  );
  /** Whether it is between the two conductors of a reading that is told. */
  const isTold = (ends: Ends): boolean =>
    told.some((nodes) => ends.every(({ node }) => nodes.includes(node)));
  const alternating = circuit.supplies.every(({ current }) => current !== 'DC');
  const points = pointsOf(machine, circuit, faults);
  const measuredOn = (suits: (ends: Ends) => boolean): Measured[] =>
    points.flatMap((first) =>
      points.flatMap((second): Measured[] => {
        const ends: Ends = [first, second];
        if (first.node === second.node || !suits(ends) || isTold(ends)) return [];
        const { volts: shown, floating } = read(first.terminal, second.terminal);
        if (floating) return [{ ends, shown: 0 }];
        // A reading that could be argued about: something between nothing and a part of the voltage.
        if (Math.abs(shown) > tolerance / 5 && Math.abs(shown) <= 2 * tolerance) return [];
        return [{ ends, shown: Math.round((alternating ? Math.abs(shown) : shown) / tolerance / 2) }];
      }),
    );
  // At a contact that takes a part of the voltage any reading may come; elsewhere hardly another than nothing or the whole.
  const sorts = random.chance(AT_DIRT)
    ? [atDirt, ...random.shuffle(CLEAN_SORTS)]
    : [...random.shuffle(CLEAN_SORTS), atDirt];
  for (const sort of sorts) {
    const pairs = measuredOn(sort);
    const readings = [...new Set(pairs.map(({ shown }) => shown))];
    if (readings.length < FEWEST_READINGS) continue;
    const shown = random.pick(readings);
    const { ends } = random.pick(pairs.filter((each) => each.shown === shown));
    return { circuit, scenario: measured, points: [ends[0].terminal, ends[1].terminal], tolerance };
  }
  return undefined;
}
