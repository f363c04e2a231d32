import type { Model } from './content-models.ts';
import type { Tree } from './tree.ts';

const camel = (name: string): string =>
  name.replace(/^qti-/, '').replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());

/** A 3.0 tree in the names of 2.2, so that both are held to one table; names must be in the version's own manner. */
export function inOldNames(tree: Tree, faults: string[], html: ReadonlySet<string>): Tree {
  if (html.has(tree.name) === tree.name.startsWith('qti-') || /[A-Z]/.test(tree.name))
    faults.push(`${tree.name} isn't named as in 3.0`);
  return {
    ...tree,
    name: camel(tree.name),
    attributes: Object.fromEntries(
      Object.entries(tree.attributes).map(([name, value]) => {
        if (!name.includes(':') && /[A-Z]/.test(name) && name !== 'schemaLocation')
          faults.push(`${name} isn't named as in 3.0`);
        return [name.includes(':') || name === 'schemaLocation' ? name : camel(name), value];
      }),
    ),
    children: tree.children.map((child) => inOldNames(child, faults, html)),
  };
}

/** Everything in a tree that its models don't allow. */
export function faultsIn(tree: Tree, models: Readonly<Record<string, Model>>): readonly string[] {
  const own = models[tree.name];
  if (!own) return [`${tree.name} is not in the model`];
  const faults: string[] = [];
  for (const name of own.required)
    if (!(name in tree.attributes)) faults.push(`${tree.name} without ${name}`);
  for (const name of Object.keys(tree.attributes))
    if (!own.required.includes(name) && !own.optional.includes(name))
      faults.push(`${tree.name} with ${name}`);
  if (!own.text && tree.text.trim() !== '') faults.push(`text in ${tree.name}`);
  let at = 0;
  for (const slot of own.children) {
    const [, names = '', count = ''] = /^(.*?)([?*+]?)$/.exec(slot)!;
    const allowed = names.split('|');
    let found = 0;
    const most = count === '*' || count === '+' ? Number.POSITIVE_INFINITY : 1;
    while (at < tree.children.length && found < most && allowed.includes(tree.children[at]!.name)) {
      at++;
      found++;
    }
    if (found === 0 && (count === '' || count === '+')) faults.push(`${tree.name} lacks ${names}`);
  }
  if (at < tree.children.length) faults.push(`${tree.children[at]!.name} out of place in ${tree.name}`);
  return [...faults, ...tree.children.flatMap((child) => faultsIn(child, models))];
}
