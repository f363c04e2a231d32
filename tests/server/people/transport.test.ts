/** How a request came, behind a proxy and without one. */
import { describe, expect, it } from 'vitest';
import { Transport } from '../../../src/server/people/transport.ts';
import { asked, outcome } from './asked.ts';

const alone = new Transport();
const behind = new Transport({ behindProxy: true });
const plain = new Transport({ plainHttp: true });
const HTTPS = { 'x-forwarded-proto': 'https' };

describe('whether it came by https', () => {
  it('is told by the proxy, and by nobody who has none', () => {
    expect(behind.isHttps(asked(HTTPS))).toBe(true);
    expect(behind.isHttps(asked({ 'x-forwarded-proto': 'http' }))).toBe(false);
    expect(behind.isHttps(asked())).toBe(false);
    expect(alone.isHttps(asked(HTTPS))).toBe(false);
  });

  it('is what the last one wrote: what came before anybody may have made up', () => {
    expect(behind.isHttps(asked({ 'x-forwarded-proto': 'https, http' }))).toBe(false);
    expect(behind.isHttps(asked({ 'x-forwarded-proto': 'http , https' }))).toBe(true);
    expect(behind.isHttps(asked({ 'x-forwarded-proto': ['http', 'https'] }))).toBe(true);
  });
});

describe('whose connection it is', () => {
  const request = asked({ 'x-forwarded-for': '203.0.113.9, 192.0.2.1' }, '10.0.0.7');

  it('is the one that the proxy saw, and without a proxy the one there is', () => {
    expect(behind.senderOf(request)).toBe('192.0.2.1');
    expect(alone.senderOf(request)).toBe('10.0.0.7');
    expect(behind.senderOf(asked({}, '10.0.0.7'))).toBe('10.0.0.7');
  });
});

describe('the address that is handed out', () => {
  it('is the one that was given, without the slashes at its end', () => {
    const own = new Transport({ address: 'https://practice.example/plant//' });
    expect(own.originOf(asked({ host: 'other.example' }))).toBe('https://practice.example/plant');
  });

  it('is otherwise the one that was asked for, as it was asked', () => {
    expect(alone.originOf(asked({ host: 'localhost:8024' }))).toBe('http://localhost:8024');
    expect(behind.originOf(asked({ host: 'practice.example', ...HTTPS }))).toBe('https://practice.example');
  });
});

describe('passwords', () => {
  const through = (transport: Transport, host: string | null, headers = {}): Promise<string> =>
    outcome(() => transport.checkSecure(asked({ ...(host === null ? {} : { host }), ...headers })));

  it.each([
    ['this machine alone', alone, 'localhost:8024', {}, 'let in'],
    ['this machine alone, by its number', alone, '127.0.0.1:8024', {}, 'let in'],
    ['this machine alone, without a port', alone, 'localhost', {}, 'let in'],
    ['a network in the clear', alone, 'practice.example', {}, 'not-secure'],
    ['a name that only begins like this machine', alone, 'localhost:8024.example', {}, 'not-secure'],
    ['nobody knows what', alone, null, {}, 'not-secure'],
    ['a network in the clear, as whoever runs it said', plain, 'practice.example', {}, 'let in'],
    ['a proxy by https', behind, 'practice.example', HTTPS, 'let in'],
    ['a proxy in the clear', behind, 'practice.example', {}, 'not-secure'],
    // The proxy is on this machine, so that its own name says nothing of how it was reached.
    ['a proxy in the clear that names this machine', behind, 'localhost:8024', {}, 'not-secure'],
  ] as const)('through %s', async (_, transport, host, headers, expected) => {
    expect(await through(transport, host, headers)).toBe(expected);
  });
});
