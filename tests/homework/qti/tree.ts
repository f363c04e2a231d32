/** XML read by libxml2, as a plain tree. Not well-formed: throws. */
import { XmlDocument, XmlElement, XmlText } from 'libxml2-wasm';

export interface Tree {
  readonly name: string;
  readonly namespace: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Tree[];
  /** Text directly in it. */
  readonly text: string;
}

function treeOf(element: XmlElement): Tree {
  const children: Tree[] = [];
  let text = '';
  for (let child = element.firstChild; child; child = child.next) {
    if (child instanceof XmlElement) children.push(treeOf(child));
    else if (child instanceof XmlText) text += child.content;
  }
  return {
    name: element.name,
    namespace: element.namespaceUri,
    attributes: Object.fromEntries(
      element.attrs.map((attribute) => [
        attribute.prefix ? `${attribute.prefix}:${attribute.name}` : attribute.name,
        attribute.value,
      ]),
    ),
    children,
    text,
  };
}

export function readXml(text: string): Tree {
  const document = XmlDocument.fromString(text);
  try {
    return treeOf(document.root);
  } finally {
    document.dispose();
  }
}

export const walk = (tree: Tree): readonly Tree[] => [tree, ...tree.children.flatMap(walk)];

export function only(tree: Tree, name: string): Tree {
  const found = walk(tree).filter((each) => each.name === name);
  if (found.length !== 1) throw new Error(`${found.length} elements ${name} in ${tree.name}`);
  return found[0]!;
}
