/** Where within the homework somebody is: the part of the address after `#/homework/`, its pieces divided by points. */

export type HomeworkRoute =
  | { readonly at: 'mine' }
  | {
      readonly at: 'paper';
      readonly paper: string /** From 1; null is the list of its items. */;
      readonly item: number | null;
    }
  | { readonly at: 'review'; readonly paper: string; readonly item: number | null }
  | { readonly at: 'sets'; readonly class: string | null }
  | { readonly at: 'new'; readonly class: string }
  | { readonly at: 'change'; readonly set: string }
  | { readonly at: 'set'; readonly set: string }
  | { readonly at: 'sample'; readonly set: string; readonly number: number }
  | { readonly at: 'typed'; readonly set: string }
  | { readonly at: 'marked'; readonly set: string; readonly paper: string; readonly item: number | null }
  /** A report by its name, of a set or a class: which there are, `tutor/reports.tsx` knows. */
  | { readonly at: 'report'; readonly report: string; readonly of: string };

const numberOf = (text: string | undefined): number | null => {
  const number = Number(text);
  return Number.isInteger(number) && number >= 1 ? number : null;
};

/** Reads it; what isn't known leads to the beginning. */
export function routeOf(detail: string | undefined): HomeworkRoute {
  const [at, first, second, third] = (detail ?? '').split('.');
  switch (at) {
    case 'mine':
      return { at };
    case 'paper':
    case 'review':
      if (first) return { at, paper: first, item: numberOf(second) };
      break;
    case 'class':
      if (first) return { at: 'sets', class: first };
      break;
    case 'new':
      if (first) return { at, class: first };
      break;
    case 'set':
    case 'change':
    case 'typed':
      if (first) return { at, set: first };
      break;
    case 'sample':
      if (first) return { at, set: first, number: numberOf(second) ?? 1 };
      break;
    case 'marked':
      if (first && second) return { at, set: first, paper: second, item: numberOf(third) };
      break;
    default:
      if (at && first) return { at: 'report', report: at, of: first };
  }
  return { at: 'sets', class: null };
}

/** The address of a place in the homework. */
export function addressOf(where: HomeworkRoute): string {
  const pieces = ((): readonly (string | number | null)[] => {
    switch (where.at) {
      case 'mine':
        return ['mine'];
      case 'paper':
      case 'review':
        return [where.at, where.paper, where.item];
      case 'sets':
        return where.class === null ? [] : ['class', where.class];
      case 'new':
        return [where.at, where.class];
      case 'report':
        return [where.report, where.of];
      case 'set':
      case 'change':
      case 'typed':
        return [where.at, where.set];
      case 'sample':
        return ['sample', where.set, where.number];
      case 'marked':
        return ['marked', where.set, where.paper, where.item];
    }
  })();
  return `#/homework${pieces.length > 0 ? `/${pieces.filter((piece) => piece !== null).join('.')}` : ''}`;
}

/** Goes there. */
export const goTo = (where: HomeworkRoute): void => {
  location.hash = addressOf(where);
};
