import { describe, expect, it } from 'vitest';
import { checkRules } from '../../src/circuit/index.ts';
import { stopWins } from '../../src/solver/index.ts';
import { circuitOf } from '../support/written.ts';

const found = (lines: readonly string[]): string[] => {
  const circuit = circuitOf(['supply A 24 V DC earthed', '-F1 breaker 4 A', ...lines].join('\n'));
  return checkRules(circuit, [stopWins]).map(({ said }) =>
    said.says === 'stop-wins' ? `${said.stop} ${said.mover}` : said.says,
  );
};

const START_STOP = ['-S1 push-button break', '-S2 push-button make'];

/** IEC 60204-1, 9.2: stop functions override the start functions that belong to them (from memory). */
describe('a stop', () => {
  it('is stronger than a start that is held', () => {
    expect(
      found([
        ...START_STOP,
        '-K1 relay 2 poles',
        'A:L+ -F1:1-2 -S1:11-12 -S2:13-14 -K1:A1-A2 A:L-',
        '-S1:12 -K1:11-14 -K1:A1',
      ]),
    ).toEqual([]);
  });

  it('is found where a start is stronger, its contact leading past the stop', () => {
    expect(
      found([
        ...START_STOP,
        '-K1 relay 2 poles',
        'A:L+ -F1:1-2 -S1:11-12 -K1:11-14 -K1:A1-A2 A:L-',
        '-F1:2 -S2:13-14 -K1:A1',
      ]),
    ).toEqual(['-S1 -K1']);
  });

  it('is found where a jog relay leads past it, and not where the stop stands before that too', () => {
    const jog = (feed: string) => [
      ...START_STOP,
      '-S3 push-button make',
      '-K1 relay 2 poles',
      '-K2 relay 2 poles',
      '-K3 relay 2 poles',
      'A:L+ -F1:1-2 -S1:11-12 -K2:11-12 -S2:13-14 -K1:A1-A2 A:L-',
      '-S2:13 -K1:11-14 -S2:14',
      `${feed} -S3:13-14 -K2:A1-A2 A:L-`,
      `${feed} -K1:21-24 -K3:A1-A2 A:L-`,
      `${feed} -K2:21-24 -K3:A1`,
    ];
    expect(found(jog('-F1:2'))).toEqual(['-S1 -K3']);
    expect(found(jog('-S1:12'))).toEqual([]);
  });

  it('of one machine says nothing of another that never hung on it, nor of what runs on by its own time', () => {
    expect(
      found([
        ...START_STOP,
        '-S3 push-button make',
        '-K1 relay 2 poles',
        '-K2 relay 2 poles',
        '-K3 off-delay 5 s 2 poles',
        'A:L+ -F1:1-2 -S1:11-12 -S2:13-14 -K1:A1-A2 A:L-',
        '-S1:12 -K1:11-14 -K1:A1',
        '-F1:2 -S3:13-14 -K2:A1-A2 A:L-',
        '-F1:2 -K1:21-24 -K3:A1-A2 A:L-',
      ]),
    ).toEqual([]);
  });

  it('that is an emergency stop is held to it as well', () => {
    expect(
      found([
        '-S1 emergency-stop break 21-22',
        '-S2 push-button make',
        '-B1 field-contact make',
        '-K1 relay 2 poles',
        'A:L+ -F1:1-2 -S1:21-22 -S2:13-14 -K1:A1-A2 A:L-',
        '-F1:2 -B1:13-14 -K1:A1',
      ]),
    ).toEqual(['-S1 -K1']);
  });
});
