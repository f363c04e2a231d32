import { describe, expect, it } from 'vitest';
import { checkRules } from '../../src/circuit/index.ts';
import { failsSafe } from '../../src/solver/index.ts';
import { circuitOf } from '../support/written.ts';

const found = (...lines: readonly string[]): string[] =>
  checkRules(circuitOf(['supply A 24 V DC earthed', '-F1 breaker 4 A', ...lines].join('\n')), [
    failsSafe,
  ]).map(({ said }) => {
    if (said.says === 'fails-safe') return `${said.lamp}: ${JSON.stringify(said.fault)}`;
    if (said.says === 'fails-safe.supply') return `${said.lamp}: supply ${said.supply}`;
    return said.says === 'fails-safe.reversed' ? `${said.relay} reversed: ${said.lamp}` : said.says;
  });

const FAN = ['-B1 field-contact break break', '-K1 relay 2 poles', '-H1 lamp green', '-H2 lamp amber'];
const CHAIN = 'A:L+ -F1:1-2 -B1:11-12 -K1:A1-A2 A:L-';

/** Energised to be well: a failure of the circuit shows as the fault does (IEC 60204-1, 9.4.1, from memory; common practice). */
describe('a relay that is energised while all is well', () => {
  it('puts the green lamp out with every failure of its chain, where that hangs on its make leg', () => {
    expect(found(...FAN, CHAIN, '-F1:2 -K1:11-14 -H1:X1-X2 A:L-', '-K1:11-12 -H2:X1-X2 A:L-')).toEqual([]);
  });

  it("isn't asked about a lamp on the contact itself, which tells of that alone and goes out with its own wire", () => {
    expect(found(...FAN, CHAIN, '-F1:2 -B1:21-22 -H1:X1-X2 A:L-', '-F1:2 -K1:11-12 -H2:X1-X2 A:L-')).toEqual(
      [],
    );
  });

  it('is found where two relays share a sensor and a lamp waits for both: what only one tells is lost', () => {
    expect(
      found(
        ...FAN,
        '-K2 relay 2 poles',
        CHAIN,
        '-B1:12 -K2:A1-A2 A:L-',
        '-F1:2 -K1:11-14 -H1:X1-X2 A:L-',
        '-F1:2 -K2:11-14 -H1:X1',
        '-F1:2 -K1:21-22 -H2:X1-X2 A:L-',
      ),
    ).toEqual(['-H1: {"says":"loose","at":"-K1:A1"}']);
  });

  it('is found where the loss of its supply lights the lamp by another relay', () => {
    expect(
      found(
        ...FAN.map((line) => (/relay|lamp/.test(line) ? `${line} 24 V DC` : line)),
        'supply B 24 V DC',
        '-K9 relay 24 V DC',
        'A:L+ -B1:11-12 -K1:A1-A2 A:L-',
        'A:L+ -F1:1-2 -K9:A1-A2 A:L-',
        'B:L+ -K1:11-14 -H1:X1-X2 B:L-',
        'B:L+ -K9:11-12 -H1:X1',
        'B:L+ -K1:21-22 -H2:X1-X2 B:L-',
      ),
    ).toEqual(['-H1: supply A']);
  });

  it('is found where its releasing turns a warning into green: a broken wire reads as well', () => {
    expect(found(...FAN, CHAIN, '-F1:2 -K1:11-14 -H2:X1-X2 A:L-', '-K1:11-12 -H1:X1-X2 A:L-')).toEqual([
      '-K1 reversed: -H1',
    ]);
  });

  it('claims it; one that is energised only by the fault does not', () => {
    expect(
      found(
        '-B1 field-contact make',
        '-K1 relay',
        '-H1 lamp green',
        '-H2 lamp amber',
        'A:L+ -F1:1-2 -B1:13-14 -K1:A1-A2 A:L-',
        '-F1:2 -K1:11-12 -H1:X1-X2 A:L-',
        '-K1:14 -H2:X1-X2 A:L-',
      ),
    ).toEqual([]);
  });
});
