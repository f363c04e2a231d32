/** Who may reach a server: nobody whom nobody let in, and no password in the clear unless that was said. */
import { describe, expect, it } from 'vitest';
import { type ReachOptions, reachOf } from '../../src/cli/commands/serve-reach.ts';
import { UsageError } from '../../src/cli/io.ts';
import { commands } from '../../src/words/en/commands/index.ts';

const here = { host: '127.0.0.1' };
const everywhere = { host: '0.0.0.0' };
const classes = { class: true };
const address = 'https://practice.example';

describe('a server that is started', () => {
  it.each([
    ['alone', here, { hosts: [] }],
    [
      'under a name, behind a sign-in',
      { ...everywhere, allowHost: ['bench.example'] },
      { hosts: ['bench.example'] },
    ],
    [
      'for a class at this machine',
      { ...here, ...classes },
      { hosts: [], class: { behindProxy: false, plainHttp: false } },
    ],
    [
      'for a class behind a proxy here',
      { ...here, ...classes, behindProxy: true, address },
      { hosts: ['practice.example'], class: { behindProxy: true, plainHttp: false, address } },
    ],
    [
      'for a class behind a proxy elsewhere, under two names',
      { ...everywhere, ...classes, behindProxy: true, address: `${address}/`, allowHost: ['other.example'] },
      {
        hosts: ['other.example', 'practice.example'],
        class: { behindProxy: true, plainHttp: false, address },
      },
    ],
    [
      'for a class in one room, as was said',
      { ...everywhere, ...classes, plainHttp: true, address: 'http://192.0.2.7:8024' },
      {
        hosts: ['192.0.2.7'],
        class: { behindProxy: false, plainHttp: true, address: 'http://192.0.2.7:8024' },
      },
    ],
  ] as const satisfies readonly (readonly [string, ReachOptions, object])[])(
    '%s may be',
    (_, options, reach) => {
      expect(reachOf(options, commands)).toEqual(reach);
    },
  );

  it.each([
    ['for all who reach it', everywhere, /nobody has to sign in/],
    ['for a class over the network', { ...everywhere, ...classes }, /in the clear/],
    [
      'for a class over the network, under a name',
      { ...everywhere, ...classes, allowHost: ['a.example'] },
      /in the clear/,
    ],
    [
      'for a class with links in the clear',
      { ...here, ...classes, address: 'http://practice.example' },
      /in the clear/,
    ],
    [
      'behind a proxy with links in the clear',
      { ...here, ...classes, behindProxy: true, address: 'http://practice.example' },
      /in the clear/,
    ],
    ['behind a proxy without a name', { ...here, ...classes, behindProxy: true }, /Nobody could open it/],
    ['in one room without a name', { ...everywhere, ...classes, plainHttp: true }, /Nobody could open it/],
    ['both ways at once', { ...here, ...classes, behindProxy: true, plainHttp: true, address }, /contradict/],
    ['with a path', { ...here, ...classes, address: `${address}/practice` }, /not the address of a server/],
    ['with something else', { ...here, ...classes, address: 'file:///etc' }, /not the address of a server/],
    [
      'for nobody who signs in, with what is for those',
      { ...here, plainHttp: true },
      /that people sign in to/,
    ],
    ['for nobody who signs in, behind a proxy', { ...here, behindProxy: true }, /that people sign in to/],
  ] as const satisfies readonly (readonly [string, ReachOptions, RegExp])[])(
    '%s may not be',
    (_, options, why) => {
      expect(() => reachOf(options, commands)).toThrow(UsageError);
      expect(() => reachOf(options, commands)).toThrow(why);
    },
  );
});
