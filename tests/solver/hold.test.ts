/** `hold` operates a mechanism by hand, whatever its coil and its time do; `free` leaves it to them (docs/solver.md). */
import { describe, expect, it } from 'vitest';
import type { Circuit, Device } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { solve } from '../../src/solver/index.ts';
import { button, lamp, latching, rated, relay, wired } from '../support/hops.ts';

const hold: Act = { kind: 'hold', device: '-K1' };
const free: Act = { kind: 'free', device: '-K1' };
const press: Act = { kind: 'press', device: '-S1' };
const release: Act = { kind: 'release', device: '-S1' };
const wait = (seconds: number): Act => ({ kind: 'wait', seconds });

const behindButton = (device: Device): Circuit =>
  wired({
    devices: [button('-S1'), device, lamp('-P1')],
    paths: ['A:L+ -S1:13-14 -K1:A1-A2 A:L-', 'A:L+ -K1:15-18 -P1:X1-X2 A:L-'],
  });
const timer = { name: '-K1', poles: 1, rating: rated(24) };
const onDelay = behindButton({ kind: 'on-delay', seconds: 5, ...timer });
const offDelay = behindButton({ kind: 'off-delay', seconds: 5, ...timer });
const flasher = behindButton({ kind: 'flasher', on: 1, off: 2, ...timer });

const endOf = (circuit: Circuit, ...acts: Act[]) => {
  const { solution } = solve(circuit, { start: 'live', faults: [], acts });
  return [solution.lamps['-P1'], solution.outcome.kind];
};

describe('a timer held by hand', () => {
  it('is operated at once, without a delay, and goes back at once when its coil has no voltage', () => {
    for (const circuit of [onDelay, offDelay, flasher]) {
      expect(endOf(circuit, hold)).toEqual(['lit', 'steady']);
      expect(endOf(circuit, hold, wait(60))).toEqual(['lit', 'steady']);
      expect(endOf(circuit, hold, free)).toEqual(['dark', 'steady']);
    }
  });

  it('goes on timing: let go too early an on-delay goes back and operates when its time is over', () => {
    expect(endOf(onDelay, press, wait(2), hold, free)).toEqual(['dark', 'steady']);
    expect(endOf(onDelay, press, wait(2), hold, wait(2), free)).toEqual(['dark', 'steady']);
    expect(endOf(onDelay, press, wait(2), hold, wait(2), free, wait(1))).toEqual(['lit', 'steady']);
    expect(endOf(onDelay, press, hold, wait(6), free)).toEqual(['lit', 'steady']);
  });

  it('lets an off-delay run out underneath', () => {
    expect(endOf(offDelay, press, release, hold, wait(2), free)).toEqual(['lit', 'steady']);
    expect(endOf(offDelay, press, release, hold, wait(6), free)).toEqual(['dark', 'steady']);
  });

  it('stays in its made span as a flasher, and flashes on when it is let go', () => {
    expect(endOf(flasher, press, hold)).toEqual(['lit', 'steady']);
    expect(endOf(flasher, press, hold, free)).toEqual(['flashing', 'keeps-switching']);
  });
});

describe('a relay held by hand', () => {
  it('drops when it is let go, and stays when its coil is between its limits', () => {
    const circuit = (watts: number): Circuit =>
      wired({
        devices: [relay('-K1'), lamp('-P2', rated(24), watts), lamp('-P1')],
        paths: ['A:L+ -P2:X1-X2 -K1:A1-A2 A:L-', 'A:L+ -K1:11-14 -P1:X1-X2 A:L-'],
      });
    // 24 V shared with a lamp of the coil's own 1 W: 12 V, between 5 and 85 %; with 0.01 W a hundredth of it.
    expect(endOf(circuit(1), hold, free)).toEqual(['lit', 'steady']);
    expect(endOf(circuit(0.01), hold, free)).toEqual(['dark', 'steady']);
  });

  it('that latches stays where the hand has put it', () => {
    const circuit = wired({
      devices: [latching('-K1'), lamp('-P1')],
      paths: ['A:L+ -K1:11-14 -P1:X1-X2 A:L-'],
    });
    expect(endOf(circuit, hold, free)).toEqual(['lit', 'steady']);
  });
});
