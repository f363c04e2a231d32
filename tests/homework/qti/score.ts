/**
 * A small reader of QTI's response processing, apart from the code that writes it: what a delivery system would give for
 * some responses. A response that isn't there is NULL.
 */
import { only, type Tree, walk } from './tree.ts';

export type Responses = Readonly<Record<string, readonly string[]>>;
type Value = number | boolean | string | null;

class Processing {
  private readonly item: Tree;
  private readonly responses: Responses;
  score = 0;

  constructor(item: Tree, responses: Responses) {
    this.item = item;
    this.responses = responses;
  }

  private mapped(identifier: string): number | null {
    const given = this.responses[identifier];
    if (!given || given.length === 0) return null;
    const declaration = walk(this.item).find(
      ({ name, attributes }) => name === 'responseDeclaration' && attributes['identifier'] === identifier,
    )!;
    const map = only(declaration, 'mapping');
    return given.reduce((sum, key) => {
      const entry = map.children.find(({ attributes }) => attributes['mapKey'] === key);
      return sum + Number(entry?.attributes['mappedValue'] ?? map.attributes['defaultValue']);
    }, 0);
  }

  private value(tree: Tree): Value {
    const values = (): Value[] => tree.children.map((child) => this.value(child));
    switch (tree.name) {
      case 'baseValue':
        return tree.attributes['baseType'] === 'float' ? Number(tree.text) : tree.text;
      case 'variable': {
        const identifier = tree.attributes['identifier']!;
        if (identifier === 'SCORE') return this.score;
        const [only_] = this.responses[identifier] ?? [];
        return only_ === undefined ? null : identifier.endsWith('VOLTS') ? Number(only_) : only_;
      }
      case 'isNull':
        return values()[0] === null;
      case 'not': {
        const [inner] = values();
        return inner === null ? null : !inner;
      }
      case 'and': {
        const all = values();
        return all.includes(false) ? false : all.includes(null) ? null : true;
      }
      case 'or': {
        const all = values();
        return all.includes(true) ? true : all.includes(null) ? null : false;
      }
      case 'match': {
        const [one, other] = values();
        return one === null || other === null ? null : one === other;
      }
      case 'equal': {
        const [one, other] = values();
        if (one === null || other === null) return null;
        const [down, up] = tree.attributes['tolerance']!.split(' ').map(Number);
        const [a, b] = [Number(one), Number(other)];
        return b >= a - down! - 1e-9 && b <= a + up! + 1e-9;
      }
      case 'sum': {
        const all = values();
        return all.includes(null) ? null : all.reduce<number>((sum, each) => sum + Number(each), 0);
      }
      case 'max': {
        const all = values();
        return all.includes(null) ? null : Math.max(...all.map(Number));
      }
      case 'mapResponse':
        return this.mapped(tree.attributes['identifier']!);
      default:
        throw new Error(`no meaning for ${tree.name}`);
    }
  }

  run(rules: readonly Tree[]): void {
    for (const rule of rules) {
      if (rule.name === 'setOutcomeValue') {
        this.score = Number(this.value(rule.children[0]!));
        continue;
      }
      const [first, ...others] = rule.children;
      const [condition, ...then] = first!.children;
      if (this.value(condition!) === true) this.run(then);
      else for (const other of others) if (other.name === 'responseElse') this.run(other.children);
    }
  }
}

export function scoreOf(item: Tree, responses: Responses): number {
  const processing = new Processing(item, responses);
  processing.run(only(item, 'responseProcessing').children);
  return processing.score;
}
