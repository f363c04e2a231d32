import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runCommand } from './fake-io.ts';

const FAN = `# Vent fan 2: running and tripped
supply A 24 V AC
-F1  breaker       "Control supply"
-B1  field-contact make "Fan tripped"
-K3  relay 2 poles
-H1  lamp green    "Fan healthy"

A:L  -F1:1-2  -B1:13-14  -K3:A1-A2  A:N
sheet 2 "Lamps"
-F1:2  -K3:11-12  -H1:X1-X2  A:N
`;
const files = { 'fan.txt': FAN };
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'polewise-draw-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

describe('draw', () => {
  it('shows the drawing as text without an output', async () => {
    const { code, out } = await runCommand(['draw', 'fan.txt'], { files });
    expect(code).toBe(0);
    for (const name of ['-F1', '-B1', '-K3', '-H1', 'Sheet 2: Lamps']) expect(out).toContain(name);
  });

  it('shows the state after acts or with a fault as text too, and every moment on the way', async () => {
    const words = ['draw', 'fan.txt', '--do', 'make -B1'];
    const after = await runCommand(words, { files });
    expect(after).toMatchObject({ code: 0, err: '' });
    expect(after.out).toContain('After: make -B1');
    expect(after.out).toContain('-K3 [███]');
    expect(after.out).not.toContain('<svg');
    const faulty = await runCommand(['draw', 'fan.txt', '--fault', '-F1:2 broken'], { files });
    expect(faulty.out).toContain('With the fault.');
    expect(faulty.out).not.toContain('(█)');
    const steps = (await runCommand([...words, '--steps'], { files })).out;
    expect(steps).toContain('1. -H1 ("Fan healthy") lights.');
    expect(steps).toContain('-K3 picks up');
    expect(steps.split('A:L 24 V AC').length).toBeGreaterThan(4);
    const only = (await runCommand([...words, '--sheet', '2', '--letters', 'new'], { files })).out;
    expect(only).not.toContain('-B1  ');
    expect(only).toContain('-P1');
  });

  it.each([40, 72, 120])('keeps to a terminal of %i columns, whatever it shows', async (columns) => {
    for (const words of [
      ['draw', 'fan.txt'],
      ['draw', 'fan.txt', '--do', 'make -B1', '--steps'],
      ['timing', 'fan.txt', '--do', 'make -B1; wait 1 s; break -B1'],
    ]) {
      const { out } = await runCommand(words, { files, columns });
      for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(columns);
    }
  });

  it('writes one SVG for each sheet, without any script', async () => {
    const { code } = await runCommand(['draw', 'fan.txt', '-o', join(folder, 'fan.svg')], { files });
    expect(code).toBe(0);
    expect(readdirSync(folder).sort()).toEqual(['fan-1.svg', 'fan-2.svg']);
    for (const name of readdirSync(folder)) {
      const svg = readFileSync(join(folder, name), 'utf8');
      expect(svg.startsWith('<svg')).toBe(true);
      expect(svg).not.toMatch(/<script|\son\w+=/);
    }
  });

  it('shows another picture after an act than at rest, and only the sheet that is wanted', async () => {
    const rest = join(folder, 'rest.svg');
    const moved = join(folder, 'moved.svg');
    await runCommand(['draw', 'fan.txt', '--sheet', '2', '-o', rest], { files });
    await runCommand(['draw', 'fan.txt', '--sheet', '2', '-o', moved, '--do', 'make -B1'], { files });
    expect(readFileSync(moved, 'utf8')).not.toBe(readFileSync(rest, 'utf8'));
  });

  it('writes a PDF, and a page for each moment with --steps', async () => {
    const pages = async (...words: string[]): Promise<number> => {
      const file = join(folder, 'fan.pdf');
      const { code, err } = await runCommand(['draw', 'fan.txt', '-o', file, ...words], { files });
      expect(err).toBe('');
      expect(code).toBe(0);
      const pdf = readFileSync(file, 'latin1');
      expect(pdf.startsWith('%PDF-')).toBe(true);
      return [...pdf.matchAll(/\/Type \/Page\b/g)].length;
    };
    expect(await pages()).toBe(2);
    expect(await pages('--steps', '--do', 'make -B1')).toBeGreaterThan(4);
  });

  it('writes designations in the letters that are wanted', async () => {
    const file = join(folder, 'new.svg');
    await runCommand(['draw', 'fan.txt', '--sheet', '2', '--letters', 'new', '-o', file], { files });
    expect(readFileSync(file, 'utf8')).toContain('-P1');
  });

  it.each([
    ['a sheet that is not there', ['--sheet', '7']],
    ['another kind of file', ['-o', 'fan.bmp']],
    ['a folder that is not there', ['-o', '/nowhere/at/all/fan.svg']],
    ['an act that cannot be done', ['--do', 'press -B1']],
    ['a width that there is not', ['--width', 'cinema']],
    ['a width for text', ['--width', 'phone']],
  ])('refuses %s in words', async (_, words) => {
    const { code, err } = await runCommand(['draw', 'fan.txt', ...words], { files });
    expect(code).toBe(2);
    expect(err).not.toMatch(/\n\s+at /);
  });
});

describe('timing', () => {
  const words = ['timing', 'fan.txt', '--do', 'make -B1; wait 1 s; break -B1'];

  it('draws every coil and lamp over the acts as a picture', async () => {
    const file = join(folder, 'fan.svg');
    expect(await runCommand([...words, '-o', file], { files })).toEqual({ code: 0, out: '', err: '' });
    const svg = readFileSync(file, 'utf8');
    expect(svg).toContain('<svg');
    for (const name of ['-B1', '-K3', '-H1']) expect(svg).toContain(name);
  });

  it('shows the same as text where no file is named', async () => {
    const { code, out } = await runCommand(words, { files });
    expect(code).toBe(0);
    for (const row of [/^-B1 +▁+█+▁+$/m, /^-K3 +▁+█+▁+$/m, /^-H1 +█+▁+█+$/m, /^2 at 1 s: -B1 .*actuated/m])
      expect(out).toMatch(row);
    const plain = await runCommand(words, { files, environment: { LC_ALL: 'C' } });
    expect([...plain.out].every((char) => char === '\n' || (char >= ' ' && char <= '~'))).toBe(true);
  });

  it('shows the times that relays take where they are asked for', async () => {
    const { out } = await runCommand([...words, '--operate-times'], { files });
    expect(out).toMatch(/^-K3 contacts /m);
    expect(out).toMatch(/^2 at 1\.0\d s: /m);
    expect(out).toContain('Typical operate and release times are shown.');
  });

  it('needs acts', async () => {
    expect((await runCommand(['timing', 'fan.txt'], { files })).code).toBe(2);
  });
});
