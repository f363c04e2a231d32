import { describe, expect, it } from 'vitest';
import { checkRules } from '../../src/circuit/index.ts';
import { noRestart } from '../../src/solver/index.ts';
import { circuitOf } from '../support/written.ts';

const found = (...lines: readonly string[]): string[] =>
  checkRules(circuitOf(['supply A 24 V DC earthed', '-F1 breaker 4 A', ...lines].join('\n')), [
    noRestart,
  ]).map(({ said }) => (said.says === 'no-restart' ? said.mover : said.says));

const BUTTONS = ['-S1 push-button break', '-S2 push-button make'];

/** IEC 60204-1, 7.5: no restart by itself when the supply returns (from memory). */
describe('what a button has started', () => {
  it('stays off when the supply returns where a relay holds itself', () => {
    expect(
      found(
        ...BUTTONS,
        'supply B 24 V DC',
        '-K1 relay 2 poles 24 V DC',
        '-H1 lamp 24 V DC',
        'A:L+ -F1:1-2 -S1:11-12 -S2:13-14 -K1:A1-A2 A:L-',
        '-S1:12 -K1:11-14 -K1:A1',
        'B:L+ -K1:21-24 -H1:X1-X2 B:L-',
      ),
    ).toEqual([]);
  });

  it('is found where a latching relay remembers it over the loss', () => {
    expect(
      found(
        ...BUTTONS,
        '-S3 push-button make',
        '-K1 latching-relay 1 pole',
        '-K2 relay 1 pole',
        'A:L+ -F1:1-2 -S2:13-14 -K1:A1-A2 A:L-',
        '-F1:2 -S3:13-14 -K1:B1-B2 A:L-',
        '-F1:2 -S1:11-12 -K1:11-14 -K2:A1-A2 A:L-',
      ),
    ).toEqual(['-K2']);
  });

  it('is found where the relay that holds it is on a supply that was not lost', () => {
    const lines = (hold: string) => [
      ...BUTTONS,
      'supply B 24 V DC',
      '-K1 relay 2 poles 24 V DC',
      '-K2 relay 2 poles 24 V DC',
      'A:L+ -F1:1-2 -S1:11-12 -S2:13-14 -K1:A1-A2 A:L-',
      `-S1:12 ${hold} -K1:A1`,
      'B:L+ -K1:21-24 -K2:A1-A2 B:L-',
    ];
    // Its own contact holds it, so a loss of B alone brings the contactor back.
    expect(found(...lines('-K1:11-14'))).toEqual(['-K2']);
    // What follows it holds it as well: lost with its supply, both are off.
    expect(found(...lines('-K2:11-14'))).toEqual([]);
  });

  it('is found where a contact that releases late holds it over a short loss', () => {
    const held = (seal: string) => [
      ...BUTTONS,
      '-K1 relay 2 poles',
      '-K2 off-delay 5 s 1 pole',
      'A:L+ -F1:1-2 -S1:11-12 -S2:13-14 -K1:A1-A2 A:L-',
      `-S1:12 ${seal} -K1:A1`,
      '-F1:2 -K1:21-24 -K2:A1-A2 A:L-',
    ];
    expect(found(...held('-K2:15-18'))).toEqual(['-K1']);
    expect(found(...held('-K1:11-14'))).toEqual([]);
  });
});

describe('what the plant or a selector starts', () => {
  it('may come back: a level that is there, a switch that stays where it was turned', () => {
    expect(
      found(
        'supply B 24 V DC',
        '-S1 selector Off/On make On',
        '-S2 push-button make',
        '-H1 lamp 24 V DC',
        '-B1 float-switch make',
        '-K1 relay 1 pole 24 V DC',
        '-K2 relay 1 pole 24 V DC',
        'A:L+ -F1:1-2 -S1:13-14 -K1:A1-A2 A:L-',
        'B:L+ -B1:13-14 -K2:A1-A2 B:L-',
        '-F1:2 -S2:13-14 -H1:X1-X2 A:L-',
      ),
    ).toEqual([]);
  });

  it('may come back on the other machine, where a button only chose which of two is wanted', () => {
    const choice = (demand: string) => [
      '-S1 push-button make',
      '-S2 push-button make',
      '-B1 float-switch make',
      '-K1 latching-relay 1 pole',
      '-K2 relay 1 pole',
      '-K3 relay 1 pole',
      'A:L+ -F1:1-2 -S1:13-14 -K1:A1-A2 A:L-',
      '-F1:2 -S2:13-14 -K1:B1-B2 A:L-',
      `-F1:2 ${demand} -K1:11-12 -K2:A1-A2 A:L-`,
      '-K1:14 -K3:A1-A2 A:L-',
    ];
    expect(found(...choice('-B1:13-14'))).toEqual([]);
  });
});
