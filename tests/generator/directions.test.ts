/**
 * What moves two ways: raise and lower, open and shut, forward and back. Relays lock each other out as contactors do (IEC 60204-1,
 * 9.3.4, from memory), and what lifts is hold-to-run between limits (common practice, no source).
 */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { familyOf, generate, randomOf } from '../../src/generator/index.ts';
import { type Movement, plants } from '../../src/generator/vocabulary/index.ts';
import { everyOutcome, machineOf, planOf, play, type Standing, solve } from '../../src/solver/index.ts';
import { lockedApart } from '../support/locked-apart.ts';

const SEEDS = 25;

interface Directions {
  readonly circuit: Circuit;
  readonly movement: Movement;
  /** The two coils and the two buttons, in the same order. */
  readonly coils: readonly [string, string];
  readonly buttons: readonly [string, string];
}

const unnumbered = (text: string | undefined): string => (text ?? '').replace(/[1-6]/, '#');

const isCoil = ({ kind }: Circuit['devices'][number]): boolean => kind === 'relay' || kind === 'contactor';

/** Everything in a circuit that moves a machine of the vocabulary two ways. */
function directionsIn(circuit: Circuit): Directions[] {
  return plants.flatMap(({ movements }) =>
    movements.flatMap((movement): Directions[] => {
      const named = (text: string, suits: (device: Circuit['devices'][number]) => boolean) =>
        circuit.devices.find((device) => suits(device) && unnumbered(device.text) === text)?.name;
      const coils = movement.ways.map(({ doing }) => named(doing, isCoil));
      const buttons = movement.ways.map(({ button }) => {
        const text = button.charAt(0).toUpperCase() + button.slice(1);
        return named(text, ({ kind }) => kind === 'push-button');
      });
      const [one, other, first, second] = [...coils, ...buttons];
      return one && other && first && second
        ? [{ circuit, movement, coils: [one, other], buttons: [first, second] }]
        : [];
    }),
  );
}

const { min, max } = familyOf('interlocked')!.size;
const sizes = Array.from({ length: max - min + 1 }, (_, index) => min + index);
const made = (asFound: boolean): Directions[] =>
  sizes.flatMap((size) =>
    Array.from({ length: SEEDS }, (_, seed) =>
      generate({ family: 'interlocked', size, seed: `ways ${seed}`, asFound }),
    ).flatMap((each) => (each.ok ? directionsIn(each.accepted.draft.circuit) : [])),
  );
const asMeant = made(false);
const asFound = made(true);

const press = (device: string): Act => ({ kind: 'press', device });
const letGo = (device: string): Act => ({ kind: 'release', device });

/** Which of the two coils is operated after each act. */
const running = ({ circuit, coils }: Directions, acts: readonly Act[]): boolean[] => {
  const { coils: standing } = solve(circuit, { start: 'live', faults: [], acts: [...acts] }).solution;
  return coils.map((coil) => standing[coil]!.operated);
};

describe('two directions', () => {
  it('are found in every circuit of the family, driven by relays and by contactors', () => {
    expect(asMeant.length).toBe(SEEDS * sizes.length);
    expect(asFound.length).toBe(SEEDS * sizes.length);
    const relays = asMeant.filter(({ circuit, coils }) =>
      circuit.devices.some(({ kind, name }) => kind === 'relay' && name === coils[0]),
    );
    expect(relays.length).toBeGreaterThan(asMeant.length / 4);
    expect(relays.length).toBeLessThan((3 * asMeant.length) / 4);
  });

  it.each([
    ['as it ought to be', asMeant],
    ['as found', asFound],
  ])('are locked both ways by their wiring, %s', (_, all) => {
    const open = all.filter(({ circuit, coils }) => {
      const locked = lockedApart(planOf(circuit));
      return !locked.some((pair) => coils.every((coil) => pair.includes(coil)));
    });
    expect(open.map(({ circuit }) => circuit.title)).toEqual([]);
  });

  it('never run both, whichever command is given first, held or let go of', () => {
    let ran = 0;
    for (const each of [...asMeant, ...asFound]) {
      for (const [one, other] of [each.buttons, [each.buttons[1], each.buttons[0]]] as const)
        for (const acts of [
          [press(one), press(other)],
          [press(one), letGo(one), press(other)],
          [press(one), press(other), letGo(one)],
          [press(one), letGo(one), press(other), letGo(other)],
        ]) {
          const now = running(each, acts);
          expect(now.every(Boolean), each.circuit.title).toBe(false);
          if (now.some(Boolean)) ran++;
        }
    }
    expect(ran).toBeGreaterThan(asMeant.length);
  });

  it('given at once from rest, come to rest with one running at most, in whatever order the two pick up', () => {
    for (const { circuit, buttons, coils } of asMeant) {
      const machine = machineOf(planOf(circuit));
      const { state } = play(machine, {
        start: 'live',
        acts: [{ kind: 'fail', supply: 'A' }, ...buttons.map(press)],
      });
      const at = coils.map((coil) => machine.mechanismOf.get(coil)!);
      const before: Standing = { endings: [{ states: [state] }], complete: true };
      const { endings, complete } = everyOutcome(machine, before, { kind: 'restore', supply: 'A' });
      expect(complete).toBe(true);
      // An ending of several states is a buzz: both pick up, put each other out, and begin again. None of them lasts.
      const resting = endings.flatMap(({ states: [first, ...others] }) =>
        others.length > 0 ? [] : [first!],
      );
      const ran = resting.map(
        ({ at: positions }) => at.filter((mechanism) => positions[mechanism] === 2).length,
      );
      expect(ran.length, circuit.title).toBeGreaterThan(0);
      expect(Math.max(...ran), circuit.title).toBeLessThan(2);
    }
  });

  it('of size 4 and more are kept apart by their buttons besides: held together from rest they run neither', () => {
    const large = sizes
      .filter((size) => size >= 4)
      .flatMap((size) =>
        Array.from({ length: SEEDS }, (_, seed) =>
          directionsIn(familyOf('interlocked')!.draft(randomOf(`buttons ${seed}`), { size }).circuit),
        ).flat(),
      );
    expect(large.length).toBe(3 * SEEDS);
    for (const { circuit, buttons, coils } of large) {
      const { coils: standing } = solve(circuit, {
        start: 'live',
        faults: [],
        acts: [{ kind: 'fail', supply: 'A' }, ...buttons.map(press), { kind: 'restore', supply: 'A' }],
      }).solution;
      expect(coils.map((coil) => standing[coil]!.operated)).toEqual([false, false]);
    }
  });
});

describe('what has an end of travel', () => {
  const limitsOf = ({ circuit, movement }: Directions) =>
    movement.ways.map(({ there }) =>
      circuit.devices.filter(
        ({ kind, text }) => kind === 'limit-switch' && there !== undefined && unnumbered(text) === there,
      ),
    );

  it('has a limit switch there on every drawing, and what turns without an end has none', () => {
    for (const each of asMeant) {
      const expected = each.movement.motion === 'turns' ? [0, 0] : [1, 1];
      expect(
        limitsOf(each).map((found) => found.length),
        each.circuit.title,
      ).toEqual(expected);
    }
  });

  it('stops there: the limit puts its direction out, though the button is held', () => {
    let stopped = 0;
    for (const each of asMeant)
      limitsOf(each).forEach(([limit], side) => {
        if (!limit) return;
        const start = press(each.buttons[side]!);
        expect(running(each, [start])[side], each.circuit.title).toBe(true);
        const reached: Act = { kind: 'break', device: limit.name };
        expect(running(each, [start, reached])[side], each.circuit.title).toBe(false);
        stopped++;
      });
    expect(stopped).toBeGreaterThan(SEEDS);
  });

  it('moves only while its button is held where it lifts', () => {
    const lifting = asMeant.filter(({ movement }) => movement.motion === 'lifts');
    expect(lifting.length).toBeGreaterThan(10);
    for (const each of lifting)
      for (const button of each.buttons)
        expect(running(each, [press(button), letGo(button)]), each.circuit.title).toEqual([false, false]);
  });
});

describe('what lifts, hauls or lowers', () => {
  const LIFTING = /hoist|ramp|winch|\blift\b|crane|skip|gangway|ladder/i;

  it('is never among machines that are started and stopped without limits', () => {
    const things = plants.flatMap(({ drives, pairs, startsLate, runsOn }) => [
      ...drives.map(({ thing }) => thing),
      ...pairs.flatMap(({ units }) => units),
      ...[...startsLate, ...runsOn].map(({ late }) => late.text).filter((text) => !/beacon/i.test(text)),
    ]);
    expect(things.filter((thing) => LIFTING.test(thing))).toEqual([]);
  });

  it('is said of each machine that does', () => {
    for (const { thing, motion } of plants.flatMap(({ movements }) => movements))
      if (LIFTING.test(thing)) expect(motion, thing).toBe('lifts');
  });
});
