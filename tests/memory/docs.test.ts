import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as memory from '../../src/memory/index.ts';

const page = readFileSync(new URL('../../docs/memory.md', import.meta.url), 'utf8');

describe('docs/memory.md', () => {
  it('gives every value as the code has it', () => {
    const told = [...page.matchAll(/^\| `([A-Z_]+)` \| ([\d.]+) \|$/gm)].map(([, name, value]) => [
      name,
      Number(value),
    ]);
    const numbers = Object.entries(memory).filter(([, value]) => typeof value === 'number');
    expect(numbers.length).toBeGreaterThan(5);
    expect(Object.fromEntries(told)).toEqual(Object.fromEntries(numbers));
  });
});
