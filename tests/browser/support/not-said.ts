/** What stands on a page in the made-up language and has not come through its catalogue. */
import type { Page } from 'playwright-core';
import { unsaid } from '../../support/made-up-language.ts';

/** What says that it is in the language of the banks, and texts of circuits where they stand alone. */
const NOT_OF_THE_PAGE = [
  'body [lang=en]',
  '.question .title-block :is(h1, h2)',
  '.try option:not([value=""])',
  '.readings :is(strong, span)',
  '.items .of',
  '.lines img',
  'figcaption',
  '.schedule .code',
].join();

/** Attributes that are read out or shown. */
const READ = ['aria-label', 'title', 'placeholder', 'alt', 'data-of', 'aria-valuetext'];

/** What is in no language: the page's name, that of a terminal, addresses. */
const NAMES = /Polewise|\bCOM\b|https?:\S+/g;

/** Its words of three letters and more, with those beside them, each once. `known` are names that people have given. */
export async function notSaid(page: Page, known: readonly string[] = []): Promise<string[]> {
  const texts = await page.evaluate(
    ({ skipped, read }) => {
      const isSkipped = (element: Element | null): boolean => element?.closest(skipped) !== null;
      const found: string[] = [document.title];
      // Sentences go on over the elements in them.
      let text = '';
      const nodes = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      for (let node = nodes.nextNode(); node; node = nodes.nextNode())
        if (!isSkipped(node.parentElement)) text += ` ${node.nodeValue}`;
      found.push(text);
      for (const element of document.querySelectorAll('body *'))
        if (!isSkipped(element)) found.push(...read.map((name) => element.getAttribute(name) ?? ''));
      return found;
    },
    { skipped: `noscript, ${NOT_OF_THE_PAGE}`, read: READ },
  );
  const left = texts.flatMap((text) => {
    const unknown = known.reduce((rest, name) => rest.replaceAll(name, ' '), unsaid(text));
    return unknown.replace(NAMES, ' ').match(/[A-Za-z]{3,}(?: [A-Za-z]+)*/g) ?? [];
  });
  return [...new Set(left)];
}
