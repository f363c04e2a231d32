import fc from 'fast-check';
import type { ComponentChildren, VNode } from 'preact';
import { describe, expect, it } from 'vitest';
import { Markdown } from '../../src/web/parts/markdown.tsx';

interface Element {
  readonly name: string;
  readonly properties: Readonly<Record<string, unknown>>;
}

/** Every element that would stand on the page, with components worked out; and all its text. */
function rendered(node: ComponentChildren): { elements: Element[]; text: string } {
  if (node === null || node === undefined || typeof node === 'boolean') return { elements: [], text: '' };
  if (Array.isArray(node)) {
    const all = node.map((entry: ComponentChildren) => rendered(entry));
    return { elements: all.flatMap(({ elements }) => elements), text: all.map(({ text }) => text).join('') };
  }
  if (typeof node !== 'object') return { elements: [], text: String(node) };
  const { type, props } = node as VNode<{ children?: ComponentChildren }>;
  if (typeof type === 'function') return rendered((type as (of: unknown) => ComponentChildren)(props));
  const { children, ...properties } = props;
  const inside = rendered(children);
  return { elements: [{ name: type, properties }, ...inside.elements], text: inside.text };
}

const shown = (text: string) => rendered(Markdown({ text }));

const ELEMENTS = new Set([
  'p',
  'strong',
  'em',
  'code',
  'br',
  'a',
  'div',
  'ul',
  'ol',
  'li',
  'pre',
  'table',
  'thead',
  'tbody',
  'tr',
  'th',
  'td',
]);
const PROPERTIES = new Set(['class', 'href', 'rel', 'target', 'scope']);

/** Holds for whatever a bank says: only known elements, no handler, no style, links to https or within the page. */
function expectHarmless(text: string): void {
  for (const { name, properties } of shown(text).elements) {
    expect(ELEMENTS, text).toContain(name);
    for (const [property, value] of Object.entries(properties)) {
      expect(PROPERTIES, text).toContain(property);
      if (property === 'href') expect(value, text).toMatch(/^(https:\/\/|#\/lessons\/[a-z0-9-]+$)/);
    }
  }
}

const HOSTILE = [
  '<script>alert(1)</script>',
  '<img src=x onerror=alert(1)>',
  '<svg/onload=alert(1)>',
  '<a href="javascript:alert(1)">x</a>',
  '[x](javascript:alert(1))',
  '[x](JaVaScRiPt:alert(1))',
  '[x](java\tscript:alert(1))',
  '[x](data:text/html;base64,PHNjcmlwdD4=)',
  '[x](vbscript:msgbox(1))',
  '[x](//elsewhere.example/a)',
  '[x](http://elsewhere.example/)',
  '[x](file:///etc/passwd)',
  '![x](https://elsewhere.example/track.png)',
  '![x](javascript:alert(1))',
  '<javascript:alert(1)>',
  '[x]: javascript:alert(1)\n\n[x]',
  '<iframe srcdoc="<script>alert(1)</script>"></iframe>',
  '<style>*{display:none}</style>',
  '<form action="https://elsewhere.example"><input name=a></form>',
  '```<script>alert(1)</script>```',
  '| a |\n| - |\n| <img src=x onerror=alert(1)> |',
  '> <script>alert(1)</script>',
  '- <b onmouseover=alert(1)>x</b>',
  '# heading <script>alert(1)</script>',
  '&lt;script&gt;alert(1)&lt;/script&gt;',
  '[x](#/bench)',
  '[x](../../etc.md)',
];

describe('Markdown of a bank', () => {
  it.each(HOSTILE)('makes nothing of %j that could act', (text) => expectHarmless(text));

  it('is harmless whatever is thrown at it', () => {
    const piece = fc.oneof(
      fc.constantFrom(...HOSTILE),
      fc.string(),
      fc.constantFrom('\n', '> ', '- ', '| ', '**', '`', '<', '](', '['),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => expectHarmless(pieces.join(''))),
      {
        numRuns: 500,
      },
    );
  });

  it('shows what lessons are written in', () => {
    const { elements, text } = shown(
      'A **make** contact, see [the pole](changeover-pole.md) and <em>raw</em>.',
    );
    expect(elements.map(({ name }) => name)).toEqual(['p', 'strong', 'a']);
    expect(elements[2]?.properties['href']).toBe('#/lessons/changeover-pole');
    expect(text).toContain('make contact');
  });

  it('opens links to elsewhere without telling where they were followed from', () => {
    const [, link] = shown('[HSE](https://www.hse.gov.uk/)').elements;
    expect(link?.properties).toMatchObject({ href: 'https://www.hse.gov.uk/', rel: 'noreferrer noopener' });
  });
});
