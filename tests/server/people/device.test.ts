import { describe, expect, it } from 'vitest';
import { deviceOf } from '../../../src/server/people/device.ts';
import { english } from '../../../src/words/en/core.ts';

/** As the browsers send it (from memory). */
const AGENTS = {
  'Chrome, Linux':
    'Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/142.0.0.0 Safari/537.36',
  'Edge, Windows':
    'Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/142.0.0.0 Safari/537.36 Edg/142.0.0.0',
  'Safari, iPhone':
    'Mozilla/5.0 (iPhone; CPU iPhone OS 18_1 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.1 Mobile/15E148 Safari/604.1',
  'Chrome, iPhone':
    'Mozilla/5.0 (iPhone; CPU iPhone OS 18_1 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) CriOS/142.0.0.0 Mobile/15E148 Safari/604.1',
  'Firefox, Android': 'Mozilla/5.0 (Android 15; Mobile; rv:144.0) Gecko/144.0 Firefox/144.0',
} as const;

describe('a device by its browser', () => {
  it.each(Object.entries(AGENTS))('is known again as %s', (name, agent) => {
    expect(deviceOf(agent, english)).toBe(name);
  });

  it('is called the same where the browser shows no window, or goes by the name it is built from', () => {
    for (const name of ['HeadlessChrome', 'Chromium'])
      expect(deviceOf(AGENTS['Chrome, Linux'].replace('Chrome', name), english)).toBe('Chrome, Linux');
  });

  it('is another program where it says nothing that is known', () => {
    expect(deviceOf(undefined, english)).toBe('another program');
    expect(deviceOf('curl/8.0', english)).toBe('another program');
  });
});
