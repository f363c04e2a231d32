/** A screen is no library: what several of them use has a room of its own. */
import { expect, it } from 'vitest';
import { files, localImports } from './house.ts';

const SCREENS = 'src/web/screens/';
/** The frame of the page, which fetches each screen when it is wanted. */
const FRAME = ['src/web/app.tsx', 'src/web/shell.tsx'];

const screenOf = (file: string): string | undefined =>
  file.startsWith(SCREENS) ? file.slice(SCREENS.length).split('/')[0] : undefined;

const importsOfScreens = files.flatMap((file) =>
  localImports(file)
    .filter((target) => screenOf(target) !== undefined)
    .map((target) => ({ file, target })),
);

it('screens import from rooms, never from one another', () => {
  expect(importsOfScreens.length).toBeGreaterThan(50);
  const wrong = importsOfScreens.filter(
    ({ file, target }) => screenOf(file) !== undefined && screenOf(file) !== screenOf(target),
  );
  expect(wrong.map(({ file, target }) => `${file} imports ${target}`)).toEqual([]);
});

it('only the frame of the page knows the screens', () => {
  const wrong = importsOfScreens.filter(({ file }) => screenOf(file) === undefined && !FRAME.includes(file));
  expect(wrong.map(({ file, target }) => `${file} imports ${target}`)).toEqual([]);
});
