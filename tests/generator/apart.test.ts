import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { WEIGHTS } from '../../src/generator/difficulty.ts';
import { families, free } from '../../src/generator/index.ts';
import { MISCONCEPTIONS } from '../../src/misconceptions/index.ts';
import { allowed, apartOf } from './apart.ts';

const all = [...families, free];
const documentation = readFileSync(new URL('../../docs/generator.md', import.meta.url), 'utf8');
const [, table = ''] = documentation.split(/<!-- (?:table: .*|end of table) -->/);
const measured = all.map((family) => apartOf(family, 120));

describe('misconceptions told apart', () => {
  it.each(measured)('$family: more of them in the questions made than in scenarios as they come', (apart) => {
    const pairs = allowed(apart).map((id) => [apart.made.get(id) ?? 0, apart.offered.get(id)!] as const);
    const sum = (at: 0 | 1) => pairs.reduce((total, pair) => total + pair[at], 0);
    expect(apart.told).toBeGreaterThan(4);
    expect(apart.answers).toBeGreaterThan(1.5);
    expect(sum(0)).toBeGreaterThan(sum(1) * 0.97);
  });

  it('each misconception about relays, contacts, timers, seals and supplies is told apart by some family', () => {
    const told = new Set(measured.flatMap(({ made }) => [...made.keys()]));
    const never = MISCONCEPTIONS.map(({ id }) => id).filter((id) => !told.has(id));
    // These show only on a meter, on terminals that stay live, or on a return side that no family interrupts.
    expect(never.sort()).toEqual(['common-reference', 'line-side-dead', 'return-ignored']);
  });
});

describe('docs/generator.md', () => {
  it('has a row in both tables for every family, and for no other', () => {
    const rows = (text: string) => [...text.matchAll(/^\| ([a-z-]+) \| [0-9]/gm)].map((match) => match[1]!);
    const ids = all.map(({ id }) => id);
    expect(rows(table)).toEqual(ids);
    expect(rows(documentation.split('<!-- table:')[0]!)).toEqual(ids);
    for (const { id, size } of all) expect(documentation).toContain(`| ${id} | ${size.min}–${size.max} |`);
  });

  it('states about what is measured', () => {
    for (const { family, told } of measured) {
      const stated = Number(
        new RegExp(`^\\| ${family} \\| [0-9]+ \\| [0-9.]+ \\| ([0-9.]+) \\|`, 'm').exec(table)?.[1],
      );
      expect(Math.abs(stated - told), family).toBeLessThan(0.8);
    }
  });

  it('states the weights of the difficulty', () => {
    const section = documentation.split('## Difficulty')[1]!.split('## Cost')[0]!;
    const stated = [...section.matchAll(/^\| .* \| ([0-9.]+) \|$/gm)].map((match) => Number(match[1]));
    expect(stated).toEqual(Object.values(WEIGHTS));
  });
});
