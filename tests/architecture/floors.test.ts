/** The laws of the house: imports run one way, without circles, and the inner folders are pure. */
import { describe, expect, it } from 'vitest';
import { files, importsOf, localImports, textOf } from './house.ts';

/** From the top down: a folder imports only from folders above it. */
const FLOORS = [
  'shared',
  'src/words',
  'src/graph',
  'src/circuit',
  'src/solver',
  'src/misconceptions',
  'src/generator',
  'src/drawing',
  'src/questions',
  'src/memory',
  'src/banks',
  'src/practice',
  'src/homework',
  'src/store',
  'src/server',
  'src/web',
  'src/cli',
];
const PURE = FLOORS.slice(0, FLOORS.indexOf('src/homework') + 1);

const floorOf = (file: string): number => FLOORS.findIndex((floor) => file.startsWith(`${floor}/`));

/** Comments and the texts of strings taken out, so that only code is looked at. */
const codeOf = (text: string): string =>
  text
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/(^|[^:])\/\/.*$/gm, '$1')
    .replace(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"/g, "''")
    .replace(/`(?:[^`\\$]|\\.)*`/g, '``');

describe('the house', () => {
  it('has every source file on a floor', () => {
    expect(files.length).toBeGreaterThan(20);
    expect(files.filter((file) => floorOf(file) < 0)).toEqual([]);
  });

  it('imports only from floors above', () => {
    const wrong = files.flatMap((file) =>
      localImports(file)
        .filter((target) => floorOf(target) < 0 || floorOf(target) > floorOf(file))
        .map((target) => `${file} imports ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  it('imports only files that are there, with their endings', () => {
    const known = new Set(files);
    const wrong = files.flatMap((file) =>
      localImports(file)
        .filter((target) => !known.has(target) && !target.endsWith('.json') && !target.endsWith('.css'))
        .map((target) => `${file} imports ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  it('has no circle of imports, of types either', () => {
    const done = new Set<string>();
    const circles: string[] = [];
    const visit = (file: string, way: readonly string[]): void => {
      if (way.includes(file)) {
        circles.push([...way.slice(way.indexOf(file)), file].join(' -> '));
        return;
      }
      if (done.has(file)) return;
      for (const target of localImports(file)) if (files.includes(target)) visit(target, [...way, file]);
      done.add(file);
    };
    for (const file of files) visit(file, []);
    expect(circles).toEqual([]);
  });

  it('is pure from circuit to homework: no node module, clock, chance, environment or output', () => {
    const impure =
      /\b(?:process|console|globalThis|performance|setTimeout|setInterval|setImmediate|fetch)\b(?!\s*:)|\bMath\.random\b|\bDate\.now\b|\bnew Date\(\s*\)|\bcrypto\./;
    const wrong = files
      .filter((file) => PURE.includes(FLOORS[floorOf(file)]!))
      .flatMap((file) => {
        const text = textOf(file);
        const modules = importsOf(file).filter((specifier) => specifier.startsWith('node:'));
        const found = codeOf(text).match(impure);
        return [
          ...modules.map((name) => `${file} imports ${name}`),
          ...(found ? [`${file} uses ${found[0]}`] : []),
        ];
      });
    expect(wrong).toEqual([]);
  });
});
