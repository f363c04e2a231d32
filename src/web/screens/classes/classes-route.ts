/** Where within the classes somebody is: what stands in the address after `#/classes/`, its pieces divided by points. */

const PARTS = ['members', 'add', 'roster', 'slips', 'change'] as const;
export type Part = (typeof PARTS)[number];

export type ClassesRoute =
  | { readonly at: 'list' }
  | { readonly at: 'new' }
  | { readonly at: 'people' }
  | { readonly at: 'class'; readonly class: string; readonly part: Part };

/** Reads it; what isn't known leads to the list. */
export function routeOf(detail: string | undefined): ClassesRoute {
  const [first = '', second = ''] = (detail ?? '').split('.');
  if (first === '') return { at: 'list' };
  if (second === '' && (first === 'new' || first === 'people')) return { at: first };
  return { at: 'class', class: first, part: PARTS.find((part) => part === second) ?? 'members' };
}

/** The address of a class, or of a part of what is done with it. */
export const classAddress = (id: string, part: Part = 'members'): string => `#/classes/${id}.${part}`;
