import { describe, expect, it } from 'vitest';
import { readCircuit } from '../../src/circuit/index.ts';
import { drawText } from '../../src/drawing/index.ts';

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
    expect(drawText(FAN, { columns: 80 })).toBe(
      [
        '              1                 2             3',
        ' A:L 24 V AC╶─┬╴',
        '         -F1  │1',
        '     Control ╲×',
        '      supply  │2',
        '              ├─────────────────┐',
        '       -B1    │13         -K3   │11',
        '       Fan [╌╲             /1 ┌╱ ╴┐',
        '   tripped    │14             │12 │14',
        '              │               │   └───────────┐',
        '              │A1        -H1  │X1        -H2  │X1',
        '        -K3 [   ]      green (╳)       amber (╳)',
        '              │A2             │X2             │X2',
        ' A:N 24 V AC╶─┴───────────────┴───────────────┴╴',
        '       11-12-14 /2        Fan             Fan',
        '       free 21-22-24      healthy         tripped',
      ].join('\n'),
    );
  });

  it('keeps to ASCII when asked', () => {
    const text = drawText(FAN, { columns: 80, ascii: true });
    expect([...text].every((char) => char === '\n' || (char >= ' ' && char <= '~'))).toBe(true);
    expect(text).toContain('-K3 [   ]');
  });

  it('folds to the width of the terminal and says where a conductor goes on', () => {
    const text = drawText(FAN, { columns: 40 });
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(40);
    expect(text).toMatch(/-[FK][13]:\d+ \/\d/);
  });
});
