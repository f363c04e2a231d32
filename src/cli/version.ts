import { readFileSync } from 'node:fs';
import { foundAbove } from './found-above.ts';

/** The version of the program. */
export function ownVersion(): string {
  const { version } = JSON.parse(readFileSync(foundAbove('package.json')!, 'utf8')) as { version: string };
  return version;
}
