/** WCAG 2.2 A and AA as far as axe-core can tell. */
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
  }[];
  readonly passes: readonly unknown[];
}

/** What axe-core finds; its script is run in the page without being part of it. */
export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations: found, passes } = await page.evaluate(
    (tags) =>
      (globalThis as unknown as { axe: { run(of: Document, options: unknown): Promise<AxeResult> } }).axe.run(
        document,
        {
          runOnly: { type: 'tag', values: tags },
        },
      ),
    TAGS,
  );
  expect(passes.length).toBeGreaterThan(5);
  return found.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary ?? ''}`),
  );
}
