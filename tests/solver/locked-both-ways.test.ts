import { describe, expect, it } from 'vitest';
import { checkRules } from '../../src/circuit/index.ts';
import { lockedBothWays } from '../../src/solver/index.ts';
import { circuitOf } from '../support/written.ts';

const found = (...lines: readonly string[]): string[] =>
  checkRules(circuitOf(['supply A 24 V DC earthed', '-F1 breaker 4 A', ...lines].join('\n')), [
    lockedBothWays,
  ]).map(({ said }) => {
    if (said.says === 'locked-both-ways') return `${said.free} with ${said.stuck}: ${said.acts.length}`;
    return said.says === 'locked-both-ways.atOnce' ? `${said.free} with ${said.stuck} at once` : said.says;
  });

const TWO = ['-S1 push-button make', '-S2 push-button make', '-K1 relay 3 poles', '-K2 relay 3 poles'];

/** IEC 60204-1, 9.3.4: contactors for opposite motions are interlocked (from memory). */
describe('two that lock each other out', () => {
  it('do so with a contact of each in the way of the other, before its button and its seal', () => {
    expect(
      found(
        ...TWO,
        'A:L+ -F1:1-2 -K2:11-12 -S1:13-14 -K1:A1-A2 A:L-',
        '-K2:12 -K1:21-24 -K1:A1',
        '-F1:2 -K1:11-12 -S2:13-14 -K2:A1-A2 A:L-',
        '-K1:12 -K2:21-24 -K2:A1',
      ),
    ).toEqual([]);
  });

  it('are found where the seal of one leads past the lock', () => {
    expect(
      found(
        ...TWO,
        'A:L+ -F1:1-2 -K2:11-12 -S1:13-14 -K1:A1-A2 A:L-',
        '-F1:2 -K1:11-12 -S2:13-14 -K2:A1-A2 A:L-',
        '-F1:2 -K2:21-24 -K2:A1',
      ),
    ).toEqual([]);
    expect(
      found(
        ...TWO,
        '-S3 push-button make',
        'A:L+ -F1:1-2 -K2:11-12 -S1:13-14 -K1:A1-A2 A:L-',
        '-F1:2 -K1:11-12 -S2:13-14 -K2:A1-A2 A:L-',
        '-F1:2 -S3:13-14 -K2:A1',
      ),
    ).toEqual(['-K2 with -K1: 1']);
  });

  it('are found where one operates at once, past its lock', () => {
    expect(
      found(
        ...TWO,
        '-B1 limit-switch break',
        'A:L+ -F1:1-2 -K2:11-12 -S1:13-14 -K1:A1-A2 A:L-',
        '-F1:2 -K1:11-12 -S2:13-14 -K2:A1-A2 A:L-',
        '-F1:2 -B1:11-12 -K2:A1',
      ),
    ).toEqual(['-K2 with -K1 at once']);
  });

  it('are found where of two contactors only one is locked: the other operates while the first is welded', () => {
    const motor = (lock: string) => [
      'supply B 400 V 3AC earthed',
      '-S1 push-button make',
      '-S2 push-button make',
      '-K1 contactor 3 main 22 24 V DC',
      '-K2 contactor 3 main 22 24 V DC',
      '-M1 motor 230 V',
      'B:L1 -K1:1-2 -M1:U1',
      'B:L2 -K1:3-4 -M1:V1',
      'B:L3 -K1:5-6 -M1:W1',
      'A:L+ -F1:1-2 -K2:21-22 -S1:13-14 -K1:A1-A2 A:L-',
      `-F1:2 ${lock} -S2:13-14 -K2:A1-A2 A:L-`,
    ];
    expect(found(...motor('-K1:21-22'))).toEqual([]);
    expect(found(...motor(''))).toEqual(['-K2 with -K1: 1']);
  });

  it('are not any two of which one is held off by the other: a jog relay that opens a seal', () => {
    expect(
      found(
        ...TWO,
        'A:L+ -F1:1-2 -K2:11-12 -S1:13-14 -K1:A1-A2 A:L-',
        '-S1:13 -K1:21-24 -S1:14',
        '-F1:2 -S2:13-14 -K2:A1-A2 A:L-',
      ),
    ).toEqual([]);
  });

  it('are found where of two directions by relays only one is locked, whether they hold themselves or not', () => {
    const oneWay = (...seals: readonly string[]) =>
      found(
        ...TWO,
        'A:L+ -F1:1-2 -K2:11-12 -S1:13-14 -K1:A1-A2 A:L-',
        '-F1:2 -S2:13-14 -K2:A1-A2 A:L-',
        ...seals,
      );
    expect(oneWay()).toEqual(['-K2 with -K1: 1']);
    expect(oneWay('-K2:12 -K1:21-24 -K1:A1', '-F1:2 -K2:31-34 -K2:A1')).toEqual(['-K2 with -K1: 1']);
  });

  it('are found where two directions are locked by their buttons alone', () => {
    const buttons = (...locks: readonly [string, string]) =>
      found(
        '-S1 push-button make break',
        '-S2 push-button make break',
        '-K1 relay 3 poles',
        '-K2 relay 3 poles',
        `A:L+ -F1:1-2 -S2:21-22 ${locks[0]} -S1:13-14 -K1:A1-A2 A:L-`,
        `-F1:2 -S1:21-22 ${locks[1]} -S2:13-14 -K2:A1-A2 A:L-`,
      );
    expect(buttons('', '')).toEqual(['-K2 with -K1: 1', '-K1 with -K2: 1']);
    expect(buttons('-K2:11-12', '')).toEqual(['-K2 with -K1: 1']);
    expect(buttons('-K2:11-12', '-K1:11-12')).toEqual([]);
  });

  it('are not a relay and what is fed by it, though it has a button besides', () => {
    expect(
      found(
        ...TWO,
        '-S3 push-button break red',
        'A:L+ -F1:1-2 -S3:11-12 -S1:13-14 -K1:A1-A2 A:L-',
        '-F1:2 -K1:11-12 -K2:21-24 -S2:13-14 -K2:A1-A2 A:L-',
        '-S2:13 -K1:31-34 -K2:A1',
      ),
    ).toEqual([]);
  });
});
