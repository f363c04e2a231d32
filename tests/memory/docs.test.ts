import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as memory from '../../src/memory/index.ts';

const page = (name: string): string => readFileSync(new URL(`../../docs/${name}`, import.meta.url), 'utf8');

describe('docs/memory.md', () => {
  it('gives every value as the code has it', () => {
    const told = [...page('memory.md').matchAll(/^\| `([A-Z_]+)` \| ([\d.]+) \|$/gm)].map(
      ([, name, value]) => [name, Number(value)],
    );
    const numbers = Object.entries(memory).filter(([, value]) => typeof value === 'number');
    expect(numbers.length).toBeGreaterThan(5);
    expect(Object.fromEntries(told)).toEqual(Object.fromEntries(numbers));
  });
});

describe('docs/errors.md', () => {
  it('has the codes for skills and plans, and no others', () => {
    const told = [...page('errors.md').matchAll(/^\| `([a-z-]+)` \| skills and plans \| (.*) \|$/gm)];
    expect(told.map(([, code]) => code)).toEqual(memory.MEMORY_CODES);
    for (const [, , meaning] of told) expect(meaning).toMatch(/^[A-Z].*\.$/);
  });
});
