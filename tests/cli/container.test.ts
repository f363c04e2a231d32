/**
 * What the container file says of the project is so. Building and running it takes a container engine; its steps were gone through by
 * hand (docs/deploying.md).
 */
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { apiRoutes } from '../../shared/api.ts';
import { createProgram } from '../../src/cli/program.ts';
import { fakeIo } from './fake-io.ts';

const root = resolve(fileURLToPath(import.meta.url), '../../..');
const text = readFileSync(join(root, 'Containerfile'), 'utf8').replaceAll('\\\n', ' ');
const instructions = text
  .split('\n')
  .filter((line) => line.trim() !== '' && !line.startsWith('#'))
  .map((line) => {
    const [word = '', ...rest] = line.trim().split(/\s+/);
    return { word, rest, list: line.slice(word.length).trim() };
  });
const of = (word: string) => instructions.filter((each) => each.word === word);
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  bin: { polewise: string };
  files: string[];
};

describe('the container file', () => {
  it('copies files that are there or are built, and everything that the package consists of', () => {
    const copied = of('COPY').flatMap(({ rest }) =>
      rest.filter((word) => !word.startsWith('--')).slice(0, -1),
    );
    const built = ['/build/dist', '/build/node_modules'];
    const missing = copied
      .filter((path) => !built.includes(path))
      .filter((path) => !existsSync(join(root, path.replace(/^\/build\//, ''))));
    expect(missing).toEqual([]);
    expect(copied).toEqual(expect.arrayContaining(manifest.files.map((name) => `/build/${name}`)));
  });

  it('runs a Node that the project is for, as nobody of importance', () => {
    const bases = of('FROM').map(({ rest }) => rest[0]);
    expect(new Set(bases).size).toBe(1);
    expect(Number(/node:(\d+)-/.exec(bases[0] ?? '')?.[1])).toBeGreaterThanOrEqual(20);
    expect(of('USER').map(({ rest }) => rest)).toEqual([['node']]);
  });

  it('starts the program with options that it has, on the port that is told and asked for', () => {
    const [start, given] = [of('ENTRYPOINT')[0]!.list, of('CMD')[0]!.list].map(
      (list) => JSON.parse(list) as string[],
    );
    expect(start?.at(-1)).toBe(`/app/${manifest.bin.polewise}`);
    const [name, ...options] = given!;
    const command = createProgram(fakeIo().io).command.commands.find((each) => each.name() === name)!;
    for (const option of options.filter((word) => word.startsWith('--')))
      expect(command.options.map(({ long }) => long)).toContain(option);
    const port = String(command.options.find(({ long }) => long === '--port')?.defaultValue);
    expect(of('EXPOSE').map(({ rest }) => rest)).toEqual([[port]]);
    const asked = /http:\/\/127\.0\.0\.1:(\d+)(\/[^']*)'/.exec(of('HEALTHCHECK')[0]!.list);
    expect(asked?.slice(1)).toEqual([port, apiRoutes.health.path]);
  });
});
