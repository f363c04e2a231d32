import { describe, expect, it } from 'vitest';
import { checkRules } from '../../src/circuit/index.ts';
import { greenMeansWell } from '../../src/solver/index.ts';
import { circuitOf } from '../support/written.ts';

const found = (colour: string, ...all: readonly string[]): string[] =>
  checkRules(
    circuitOf(
      [
        'supply A 24 V DC earthed',
        '-F1 breaker 4 A',
        '-B1 field-contact make',
        '-B2 field-contact make',
        '-K1 relay 3 poles',
        '-K2 relay 3 poles',
        '-H1 lamp amber',
        '-H2 lamp amber',
        `-H3 lamp ${colour}`,
        'A:L+ -F1:1-2 -B1:13-14 -K1:A1-A2 A:L-',
        '-F1:2 -B2:13-14 -K2:A1-A2 A:L-',
        '-F1:2 -K1:11-14 -H1:X1-X2 A:L-',
        '-F1:2 -K2:11-14 -H2:X1-X2 A:L-',
        ...all,
      ].join('\n'),
    ),
    [greenMeansWell],
  ).map(({ said }) => (said.says === 'green-means-well' ? `${said.lamp} beside ${said.warning}` : said.says));

/** IEC 60204-1, 10.3.2: green is for the normal condition (from memory). */
describe('a green lamp for several things', () => {
  it('goes out with each of them where their contacts are in one series', () => {
    expect(found('green', '-F1:2 -K1:21-22 -K2:21-22 -H3:X1-X2 A:L-')).toEqual([]);
  });

  it('is found where they are side by side: it is lit beside a warning', () => {
    const sides = ['-F1:2 -K1:21-22 -H3:X1-X2 A:L-', '-F1:2 -K2:21-22 -H3:X1'];
    expect(found('green', ...sides)).toEqual(['-H3 beside -H1']);
    // A white lamp says neither that all is well nor that it isn't.
    expect(found('white', ...sides)).toEqual([]);
  });

  it('that has to do with one of them only is not meant by the other', () => {
    expect(found('green', '-F1:2 -K1:21-22 -H3:X1-X2 A:L-')).toEqual([]);
  });
});
