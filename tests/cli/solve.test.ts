import { describe, expect, it } from 'vitest';
import { solution } from '../../shared/solution.ts';
import { readCircuit } from '../../src/circuit/index.ts';
import { runCommand } from './fake-io.ts';

const FAN = `# Vent fan 2: running and tripped
supply A 24 V AC
-F1  breaker       "Control supply"
-B1  field-contact make "Fan tripped"
-K3  relay 2 poles
-H1  lamp green    "Fan healthy"
-H2  lamp amber    "Fan tripped"

A:L  -F1:1-2  -B1:13-14  -K3:A1-A2  A:N
-F1:2  -K3:11-12  -H1:X1-X2  A:N
-K3:11-14  -H2:X1-X2  A:N
`;
const files = { 'fan.txt': FAN };

describe('solve', () => {
  it('tells the rest state, and the state after acts', async () => {
    const rest = await runCommand(['solve', 'fan.txt'], { files });
    expect(rest.code).toBe(0);
    expect(rest.out).toMatch(/-H1 +lit/);
    const tripped = await runCommand(['solve', 'fan.txt', '--do', 'make -B1'], { files });
    expect(tripped.out).toMatch(/-H1 +dark/);
    expect(tripped.out).toMatch(/-H2 +lit/);
    expect(tripped.out).toContain('-K3:11-12');
  });

  it('prints JSON that the contract describes', async () => {
    const { out, code } = await runCommand(['solve', 'fan.txt', '--do', 'hold -K3', '--json'], { files });
    expect(code).toBe(0);
    const value = solution.parse(JSON.parse(out));
    expect(value.lamps).toEqual({ '-H1': 'dark', '-H2': 'lit' });
    expect(value.coils['-K3']).toMatchObject({ operated: true, energised: true, volts: 0 });
  });

  it('takes faults, several at once', async () => {
    const { out } = await runCommand(
      [
        'solve',
        'fan.txt',
        '--fault',
        '-K3:14 broken',
        '--fault',
        '-H1:X1-X2 open',
        '--do',
        'make -B1',
        '--json',
      ],
      { files },
    );
    expect(JSON.parse(out).lamps).toEqual({ '-H1': 'dark', '-H2': 'dark' });
  });

  it('reads the JSON form and standard input', async () => {
    const circuit = {
      supplies: [{ name: 'A', volts: 24, current: 'DC', earthed: false }],
      devices: [],
      sheets: [],
      paths: [],
    };
    const { code, out } = await runCommand(['solve', '-'], { files: { '-': JSON.stringify(circuit) } });
    expect(out).toContain('steady');
    expect(code).toBe(0);
  });

  it('ends with 0 for outcomes other than steady', async () => {
    const buzzer = FAN.replace('-B1:13-14  -K3:A1-A2', '-B1:13-14  -K3:21-22  -K3:A1-A2');
    const { code, out } = await runCommand(['solve', 'buzzer.txt', '--do', 'make -B1'], {
      files: { 'buzzer.txt': buzzer },
    });
    expect(code).toBe(0);
    expect(out).toContain('keeps switching');
  });

  it('says what it could not decide, in words and in JSON, and ends with 1', async () => {
    const size = 14;
    const numbers = Array.from({ length: size }, (_, index) => index + 1);
    const locked = [
      '# Ferry ramp: relays that lock out two others each',
      'supply A 24 V DC',
      ...numbers.map((n) => `-K${n} relay 2 poles`),
      ...numbers.map(
        (n) => `A:L+ -K${(n % size) + 1}:11-12 -K${((n + 1) % size) + 1}:21-22 -K${n}:A1-A2 A:L-`,
      ),
    ].join('\n');
    const files = { 'locked.txt': locked };
    const told = await runCommand(['solve', 'locked.txt'], { files });
    expect(told.code).toBe(1);
    expect(told.out).toContain('not decided');
    expect(told.out).not.toContain('steady');
    const { out, code } = await runCommand(['solve', 'locked.txt', '--json'], { files });
    expect(code).toBe(1);
    expect(solution.parse(JSON.parse(out)).outcome.kind).toBe('undecided');
    const drawn = await runCommand(['draw', 'locked.txt', '--fault', '-K1 stuck'], { files });
    expect(drawn.err).toContain('not decided');
  });

  it('refuses a bad circuit with every mistake, its line and column, and exit code 2', async () => {
    const bad = FAN.replace('relay 2 poles', 'relay 9 poles').replace('-H2  lamp amber', '-H2  lampe amber');
    const { code, err, out } = await runCommand(['solve', 'bad.txt'], { files: { 'bad.txt': bad } });
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/bad\.txt:5:\d+: /);
    expect(err).toMatch(/bad\.txt:7:\d+: /);
    expect(err).not.toMatch(/\bat .*\.ts:/);
  });

  it('refuses acts and faults that the circuit has no device for', async () => {
    const acts = await runCommand(['solve', 'fan.txt', '--do', 'press -S9'], { files });
    expect(acts.code).toBe(2);
    expect(acts.err).toContain('-S9');
    const faults = await runCommand(['solve', 'fan.txt', '--fault', '-K9:14 broken'], { files });
    expect(faults.code).toBe(2);
    expect(faults.err).toContain('-K9');
  });

  it.each([
    ['a file that is not there', ['solve', 'nothing.txt']],
    ['no file', ['solve']],
    ['an unknown option', ['solve', 'fan.txt', '--quickly']],
    ['an unknown command', ['sovle', 'fan.txt']],
  ])('tells %s in words, with exit code 2 and no stack', async (_, words) => {
    const { code, err } = await runCommand(words, { files });
    expect(code).toBe(2);
    expect(err).not.toMatch(/\n\s+at /);
    expect(err.length).toBeGreaterThan(10);
  });

  it('shows examples in its help', async () => {
    const { code, out } = await runCommand(['solve', '--help']);
    expect(code).toBe(0);
    expect(out).toContain('polewise solve fan.txt --do');
  });

  it('tells what breaks a rule on its line, solved all the same', async () => {
    const jog = `# Flour line: jog past the stop
supply A 24 V DC earthed
-F1 breaker 4 A
-S1 push-button break
-S2 push-button make
-S3 push-button make
-K1 relay 2 poles
A:L+ -F1:1-2 -S1:11-12 -S2:13-14 -K1:A1-A2 A:L-
-S1:12 -K1:11-14 -S2:14
-F1:2 -S3:13-14 -K1:A1
`;
    const { code, out, err } = await runCommand(['solve', 'jog.txt', '--json'], {
      files: { 'jog.txt': jog },
    });
    expect(code).toBe(0);
    expect(solution.parse(JSON.parse(out)).coils['-K1']).toMatchObject({ operated: false });
    expect(err).toContain('jog.txt:8:34: -K1 operates although -S1, which stops it otherwise, is actuated');
    expect(err).toContain('Solved as it is, although that breaks a rule.');
    // Read from JSON it has no lines; a circuit that keeps the rules says nothing.
    const read = readCircuit(jog);
    const json = JSON.stringify(read.ok && read.value);
    const again = await runCommand(['solve', 'jog.json'], { files: { 'jog.json': json } });
    expect(again.err).toContain('jog.json: -K1 operates although');
    expect((await runCommand(['solve', 'fan.txt'], { files })).err).toBe('');
  });
});
