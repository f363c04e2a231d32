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
  ])('refuses %s in words', async (_, words) => {
    const { code, err } = await runCommand(['draw', 'fan.txt', ...words], { files });
    expect(code).toBe(2);
    expect(err).not.toMatch(/\n\s+at /);
  });
});

describe('timing', () => {
  it('draws every coil and lamp over the acts', async () => {
    const { code, out } = await runCommand(['timing', 'fan.txt', '--do', 'make -B1; wait 1 s; break -B1'], {
      files,
    });
    expect(code).toBe(0);
    expect(out).toContain('<svg');
    for (const name of ['-B1', '-K3', '-H1']) expect(out).toContain(name);
  });

  it('needs acts', async () => {
    expect((await runCommand(['timing', 'fan.txt'], { files })).code).toBe(2);
  });
});
