import { describe, expect, it } from 'vitest';
import { readActs, readCircuit } from '../../src/circuit/index.ts';
import { drawText, layOut, PROFILES, shownState, stepsOf, timingText } from '../../src/drawing/index.ts';
import { effectsOf } from '../../src/drawing/picture/state-marks.ts';
import { REST } from '../../src/drawing/states/shown-state.ts';
import { solve } from '../../src/solver/index.ts';
import { english } from '../../src/words/en/core.ts';

const circuit = (text: string) => {
  const read = readCircuit(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
};

const FAN = circuit(`
# Vent fan 2: running and tripped
supply A 24 V AC
-F1  breaker       "Control supply"
-B1  field-contact make "Fan tripped"
-K3  relay 2 poles
-H1  lamp green    "Fan healthy"
-H2  lamp amber    "Fan tripped"

A:L  -F1:1-2  -B1:13-14  -K3:A1-A2  A:N
-F1:2  -K3:11-12  -H1:X1-X2  A:N
-K3:11-14  -H2:X1-X2  A:N
`);

describe('the drawing for a terminal', () => {
  it('shows paths as columns, a changeover with its common above and both legs below, and lists the contacts', () => {
    expect(drawText(english, FAN, { columns: 80 })).toBe(
      [
        '                1                   2             3',
        '   A:L 24 V AC╶─┐',
        '           -F1  │1',
        'Control supply ╲×',
        '                │2',
        '                ├───────────────────┐',
        '         -B1    │13           -K3   │11',
        ' Fan tripped [╌╲               /1 ┌╱ ╴┐',
        '                │14               │12 │14',
        '                │                 │   └───────────┐',
        '                │A1          -H1  │X1        -H2  │X1',
        '          -K3 [   ]        green (╳)       amber (╳)',
        '                │A2               │X2             │X2',
        '   A:N 24 V AC╶─┴─────────────────┴───────────────┘',
        '         11-12-14 /2        Fan healthy    Fan tripped',
        '         free 21-22-24',
      ].join('\n'),
    );
  });

  it('shows a state: blades moved, what is on filled, conductors with a voltage heavier', () => {
    const after = (acts: string) => {
      const read = readActs(acts, FAN);
      if (!read.ok) throw new Error(acts);
      return shownState(solve(FAN, { start: 'live', faults: [], acts: read.value }));
    };
    expect(drawText(english, FAN, { columns: 80, state: after('make -B1') })).toBe(
      [
        '                1                   2             3',
        '   A:L 24 V AC╺━┓',
        '           -F1  ┃1',
        'Control supply  ×',
        '                ┃2',
        '                ┣━━━━━━━━━━━━━━━━━━━┓',
        '         -B1    ┃13           -K3   ┃11',
        ' Fan tripped [╌ ╱              /1 ┌╶ ╲┓',
        '                ┃14               │12 ┃14',
        '                ┃                 │   ┗━━━━━━━━━━━┓',
        '                ┃A1          -H1  │X1        -H2  ┃X1',
        '          -K3 [███]        green (╳)       amber (█)',
        '                │A2               │X2             │X2',
        '   A:N 24 V AC╶─┴─────────────────┴───────────────┘',
        '         11-12-14 /2        Fan healthy    Fan tripped',
        '         free 21-22-24',
      ].join('\n'),
    );
    // Between its legs the blade touches neither.
    const { steps } = stepsOf(FAN, { start: 'live', faults: [], acts: [{ kind: 'make', device: '-B1' }] });
    expect(steps.some(({ state }) => drawText(english, FAN, { columns: 80, state }).includes('┌╶│╴┐'))).toBe(
      true,
    );
    expect(drawText(english, FAN, { columns: 80, state: REST })).toBe(
      drawText(english, FAN, { columns: 80 }),
    );
  });

  it.each([
    ['', '[S  ]', '[R  ]'],
    ['press -S1', '[S██]', '[R  ]'],
    ['press -S1; release -S1; press -S2', '[S  ]', '[R██]'],
  ])('fills of a latching relay the coil that is energised, after %j', (acts, set, reset) => {
    const latching = circuit(`supply A 24 V DC
-S1 push-button make
-S2 push-button make
-K7 latching-relay
-H1 lamp
A:L+ -S1:13-14 -K7:A1-A2 A:L-
A:L+ -S2:13-14 -K7:B1-B2 A:L-
A:L+ -K7:11-14 -H1:X1-X2 A:L-`);
    const read = readActs(acts, latching);
    if (!read.ok) throw new Error(acts);
    const state = shownState(solve(latching, { start: 'live', faults: [], acts: read.value }));
    const text = drawText(english, latching, { columns: 80, state });
    expect([text.includes(set), text.includes(reset)]).toEqual([true, true]);
    const filled = layOut(english, latching, PROFILES.screen).sheets[0]!.symbols.flatMap((symbol) =>
      symbol.form === 'coil' && effectsOf(symbol, state).length > 0 ? [symbol.id] : [],
    );
    expect(filled).toEqual(acts === '' ? [] : [acts.endsWith('-S2') ? '-K7:B1' : '-K7:A1']);
  });

  it.each([undefined, 'make -B1'])('keeps to ASCII when asked, after %s', (acts) => {
    const read = readActs(acts ?? '', FAN);
    if (!read.ok) throw new Error(acts);
    const state = shownState(solve(FAN, { start: 'live', faults: [], acts: read.value }));
    const text = drawText(english, FAN, {
      columns: 80,
      ascii: true,
      ...(acts === undefined ? {} : { state }),
    });
    expect([...text].every((char) => char === '\n' || (char >= ' ' && char <= '~'))).toBe(true);
    // A character that has no stand-in.
    expect(text).not.toContain('?');
  });

  it('keeps to ASCII also at rest', () => {
    const text = drawText(english, FAN, { columns: 80, ascii: true });
    expect([...text].every((char) => char === '\n' || (char >= ' ' && char <= '~'))).toBe(true);
    expect(text).toContain('-K3 [   ]');
  });

  it('folds to the width of the terminal and says where a conductor goes on', () => {
    const text = drawText(english, FAN, { columns: 40 });
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(40);
    expect(text).toMatch(/-[FK][13]:\d+ \/\d/);
  });
});

describe('the timing diagram for a terminal', () => {
  const timing = (acts: string, columns = 60, ascii = false) => {
    const read = readActs(acts, FAN);
    if (!read.ok) throw new Error(acts);
    return timingText(english, FAN, { start: 'live', faults: [], acts: read.value }, { columns, ascii });
  };

  it('has a row for everything that changes, acts above it, times below, and both in words', () => {
    expect(timing('make -B1; wait 2 s; break -B1', 56, true)).toBe(
      [
        '         1                                          2',
        '-B1   ___###########################################____',
        '-K3   ___###########################################____',
        '-H1   ###___________________________________________####',
        '-H2   ___###########################################____',
        '      ---+----------+----------+---------+----------+---',
        '         0       500 ms       1 s      1.5 s       2 s',
        '',
        '1 at 0: -B1 ("Fan tripped") is actuated',
        '2 at 2 s: -B1 ("Fan tripped") is no longer actuated',
        '',
        '# on, operated or closed   _ off or at rest',
        'The milliseconds that relays take to operate and release',
        'are not shown.',
      ].join('\n'),
    );
  });

  it.each([40, 80, 160])('keeps to %i columns', (columns) => {
    const acts = Array.from({ length: 12 }, (_, at) => `make -B1; wait ${at + 1} s; break -B1; wait 90 ms`);
    for (const line of timing(acts.join('; '), columns).split('\n'))
      expect([...line].length).toBeLessThanOrEqual(columns);
  });

  it('shows in order what takes no time, leaves out long times and loses no pulse', () => {
    const row = (text: string, name: string): string =>
      text
        .split('\n')
        .find((line) => line.startsWith(`${name} `))!
        .slice(6);
    const again = timing('make -B1; wait 30 min; break -B1; make -B1; wait 30 min');
    expect(again).toContain('· no time passes, only the order counts');
    expect(row(again, '-B1')).toMatch(/^▁+█+▁+█+$/);
    const short = timing('make -B1; wait 2 s; break -B1; wait 99 min; make -B1; wait 3 s');
    expect(short).toContain('// time left out');
    expect(row(short, '-B1')).toMatch(/^▁+█+▁+\/\/▁+█+$/);
    const pulses = timing(Array.from({ length: 40 }, () => 'make -B1; break -B1; wait 1 s').join('; '));
    expect(pulses).toContain('▌ on and off again');
  });
});
