import { expect, it } from 'vitest';
import { deviceIn } from '../../../src/server/people/entering.ts';
import type { Service } from '../../../src/server/service.ts';
import { english } from '../../support/in-english.ts';
import { asked } from './asked.ts';

it('a session is known again by the browser that it was begun in', () => {
  const agent = 'Mozilla/5.0 (X11; Linux x86_64; rv:128.0) Gecko/20100101 Firefox/128.0';
  const service = { words: english } as unknown as Service;
  expect(deviceIn(service, asked({ 'user-agent': agent }))).toBe('Firefox, Linux');
  expect(deviceIn(service, asked())).toBe('another program');
});
