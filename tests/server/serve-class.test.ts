/** `serve --class` as a program: the key of the first run, and what is left after it was killed. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { type Served, served } from './served.ts';

const folder = mkdtempSync(join(tmpdir(), 'polewise-serve-class-'));
let running: Served | undefined;
afterAll(async () => {
  if (running?.child.exitCode === null && running.child.signalCode === null) await running.end('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

const post = (address: string, path: string, body: object, cookie = '') =>
  fetch(`${address}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie },
    body: JSON.stringify(body),
  });

it('the key that is printed makes the administrator, who is still signed in after the server was killed', async () => {
  running = await served(['--class', '--data', folder, '--log', 'info']);
  const key = /give this key: (\S+)/.exec(running.printed())![1]!;
  const account = { key, name: 'Ada', signIn: 'ada', password: 'nine potted ferns' };
  const reply = await post(running.address, '/api/first-run', account);
  expect(reply.status).toBe(200);
  const cookie = reply.headers.get('set-cookie')!.split(';')[0]!;
  const made = await post(running.address, '/api/classes', { title: 'Flour line' }, cookie);
  expect(made.status).toBe(200);
  const logged = running.printed().slice(running.printed().indexOf('Stop with'));
  expect(logged).toContain('/api/first-run');
  expect(logged).not.toContain(cookie.split('=')[1]);
  expect(logged).not.toContain('nine potted ferns');
  expect(await running.end('SIGKILL')).toBeNull();

  running = await served(['--class', '--data', folder]);
  expect(running.printed()).not.toContain('key');
  const classes = await fetch(`${running.address}/api/classes`, { headers: { cookie } });
  expect(await classes.json()).toMatchObject({ classes: [{ title: 'Flour line' }] });
  const again = await post(running.address, '/api/sign-in', { signIn: 'ada', password: 'nine potted ferns' });
  expect(again.status).toBe(200);
  expect(await running.end('SIGTERM')).toBe(0);
});
