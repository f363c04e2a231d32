/** Functions are short enough to be seen at once; the linter holds it. What it passes over is what was longer, and only that. */
import { readFileSync } from 'node:fs';
import { parseSync, Visitor } from 'oxc-parser';
import { expect, it } from 'vitest';
import { files, textOf } from './house.ts';

interface Override {
  readonly includes: readonly string[];
  readonly linter: {
    readonly rules: {
      readonly complexity?: {
        readonly noExcessiveLinesPerFunction?: { readonly options: { readonly maxLines: number } };
      };
    };
  };
}

const { overrides } = JSON.parse(readFileSync(new URL('../../biome.json', import.meta.url), 'utf8')) as {
  readonly overrides: readonly Override[];
};
const rule = overrides.find(({ linter }) => linter.rules.complexity?.noExcessiveLinesPerFunction);
const most = rule?.linter.rules.complexity?.noExcessiveLinesPerFunction?.options.maxLines ?? 0;
/** They are what databases were made with: they stay as they are. */
const MIGRATIONS = 'src/store/migrations/*.ts';

const isLong = (file: string): boolean => {
  const source = textOf(file);
  let long = false;
  const look = ({
    body,
  }: {
    readonly body: { readonly start: number; readonly end: number } | null;
  }): void => {
    if (body && source.slice(body.start, body.end).split('\n').length > most) long = true;
  };
  new Visitor({
    FunctionDeclaration: look,
    FunctionExpression: look,
    ArrowFunctionExpression: look,
  }).visit(parseSync(file, source).program);
  return long;
};

it('the linter holds functions to a length everywhere in src', () => {
  expect(most).toBe(60);
  expect(rule?.includes.slice(0, 3)).toEqual(['src/**', 'shared/**', 'tools/**']);
});

it('every exception is one that is still there', () => {
  const named = (rule?.includes.slice(3) ?? []).map((pattern) => pattern.replace(/^!/, ''));
  expect(named).toContain(MIGRATIONS);
  const rest = named.filter((name) => name !== MIGRATIONS);
  expect(rest.filter((name) => !files.includes(name) || !isLong(name))).toEqual([]);
});
