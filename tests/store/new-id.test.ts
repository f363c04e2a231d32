import { expect, it } from 'vitest';
import { newId } from '../../src/store/index.ts';

it('names things so that they can be typed in a command: never like an option', () => {
  const ids = Array.from({ length: 2000 }, newId);
  for (const id of ids) expect(id).toMatch(/^[0-9A-Za-z]{21}$/);
  expect(new Set(ids).size).toBe(2000);
});
