import type { Words } from '../../words/index.ts';

const BROWSERS = [
  ['Edge', /\bEdgA?\//],
  ['Opera', /\bOPR\//],
  ['Firefox', /\b(?:Firefox|FxiOS)\//],
  ['Chrome', /\b(?:HeadlessChrome|Chromium|Chrome|CriOS)\//],
  ['Safari', /\bSafari\//],
] as const;
const SYSTEMS = [
  ['Android', /\bAndroid\b/],
  ['iPhone', /\biPhone\b/],
  ['iPad', /\biPad\b/],
  ['Windows', /\bWindows\b/],
  ['Mac', /\bMacintosh\b/],
  ['Linux', /\bLinux\b/],
] as const;

const nameIn = (agent: string, list: readonly (readonly [string, RegExp])[]): string | undefined =>
  list.find(([, sign]) => sign.test(agent))?.[0];

/** By what somebody knows a session again: browser and system, and no more of what the browser tells of itself. */
export function deviceOf(agent: string | undefined, { server }: Words): string {
  const text = (agent ?? '').slice(0, 500);
  const known = [nameIn(text, BROWSERS), nameIn(text, SYSTEMS)].filter((name) => name !== undefined);
  return known.join(', ') || server.kept.anotherProgram;
}
