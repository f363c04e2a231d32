/** XML as data, and as text. */

export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | number | boolean>>;
  readonly children: readonly (XmlElement | string)[];
}

export const xml = (
  name: string,
  attributes: XmlElement['attributes'] = {},
  children: XmlElement['children'] = [],
): XmlElement => ({ name, attributes, children });

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
/** What XML 1.0 has no way to write is left out. */
const NOT_XML = /[^\t\n\r\x20-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

const escaped = (text: string): string =>
  text.replace(NOT_XML, '').replace(/[&<>"]/g, (char) => ENTITIES[char]!);

/** How the names of a vocabulary are written in one of its versions. */
export interface Naming {
  element(name: string): string;
  attribute(name: string): string;
}

function elementText({ name, attributes, children }: XmlElement, naming: Naming): string {
  const tag = naming.element(name);
  const written = Object.entries(attributes)
    .map(([key, value]) => ` ${naming.attribute(key)}="${escaped(String(value))}"`)
    .join('');
  if (children.length === 0) return `<${tag}${written}/>`;
  const inner = children
    .map((child) => (typeof child === 'string' ? escaped(child) : elementText(child, naming)))
    .join('');
  return `<${tag}${written}>${inner}</${tag}>`;
}

export const xmlDocument = (root: XmlElement, naming: Naming): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n${elementText(root, naming)}\n`;
