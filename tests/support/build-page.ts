import { viteBuild } from './vite-build.ts';

/** Builds the page as it is delivered into a folder. Tests take the one that `built.ts` gives. */
export async function buildPage(folder: string): Promise<string> {
  await viteBuild('vite.config.ts', folder);
  return folder;
}

/** The same with the made-up language in it. */
export async function buildPageMadeUp(folder: string): Promise<string> {
  await viteBuild('tests/support/made-up.config.ts', folder);
  return folder;
}
