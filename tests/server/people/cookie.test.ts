import { describe, expect, it } from 'vitest';
import { dropToken, setToken, tokenIn } from '../../../src/server/people/cookie.ts';
import { asked, replying, sentBack } from './asked.ts';

const TOKEN = 'aZ09_-'.padEnd(43, 'x');
const given = (cookie: string) => tokenIn(asked({ cookie }));

describe('the token of a session', () => {
  it('comes back with the next request, also among other cookies', () => {
    const { reply, set } = replying();
    setToken(reply, TOKEN, { seconds: 60, secure: true });
    expect(given(sentBack(set[0]!))).toBe(TOKEN);
    expect(given(`theme=dark;${sentBack(set[0]!)}; last=1`)).toBe(TOKEN);
    expect(set).toEqual([`polewise_session=${TOKEN}; Max-Age=60; Path=/; HttpOnly; SameSite=Strict; Secure`]);
  });

  it.each([
    '',
    `other=${TOKEN}`,
    `polewise_session=${TOKEN}x`,
    `polewise_session=x${TOKEN}`,
    `polewise_session=${TOKEN.slice(1)}`,
    `polewise_session=${TOKEN.slice(1)}!`,
    'polewise_session',
  ])('is none where what came is %j', (cookie) => {
    expect(given(cookie)).toBeNull();
  });

  it('is none where no cookie came', () => {
    expect(tokenIn(asked())).toBeNull();
  });

  it('is forgotten by the browser at once when it is dropped', () => {
    const { reply, set } = replying();
    dropToken(reply, false);
    expect(set).toEqual(['polewise_session=; Max-Age=0; Path=/; HttpOnly; SameSite=Strict']);
    expect(given(sentBack(set[0]!))).toBeNull();
  });
});
