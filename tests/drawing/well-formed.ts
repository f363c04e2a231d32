/** Whether a text is well-formed XML of the plain kind a drawing is: elements, attributes in quotes, five entities. */
export function wellFormed(xml: string): string[] {
  const faults: string[] = [];
  const open: string[] = [];
  let roots = 0;
  const token = /<(\/?)([A-Za-z][\w:-]*)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>|[^<]+|</g;
  for (const [text, closing, name, attributes = '', alone] of xml.matchAll(token)) {
    if (name === undefined) {
      if (text === '<') faults.push('a stray <');
      else if (/&(?!(?:amp|lt|gt|quot|apos);)/.test(text)) faults.push(`a stray & in ${text.slice(0, 40)}`);
      else if (open.length === 0 && text.trim()) faults.push(`text outside: ${text.slice(0, 40)}`);
      continue;
    }
    if (/&(?!(?:amp|lt|gt|quot|apos);)/.test(attributes)) faults.push(`a stray & in ${name}`);
    const names = [...attributes.matchAll(/([\w:-]+)="/g)].map(([, attribute]) => attribute);
    if (new Set(names).size !== names.length) faults.push(`an attribute twice in ${name}`);
    if (closing) {
      if (open.pop() !== name) faults.push(`</${name}> closes nothing`);
    } else {
      if (open.length === 0) roots += 1;
      if (!alone) open.push(name);
    }
  }
  if (open.length > 0) faults.push(`left open: ${open.join(' ')}`);
  if (roots !== 1) faults.push(`${roots} roots`);
  return faults;
}
