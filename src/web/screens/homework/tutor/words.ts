import type { HomeworkWish, SetState } from '../../../../../shared/homework-views.ts';
import { whenText } from '../moments.ts';

/** Where a set stands, in words. */
export function stateText(
  state: SetState,
  { opensAt, closesAt }: { opensAt: number; closesAt: number },
): string {
  switch (state) {
    case 'draft':
      return 'draft';
    case 'before':
      return `opens ${whenText(opensAt)}`;
    case 'open':
      return `open until ${whenText(closesAt)}`;
    case 'closed':
      return `closed ${whenText(closesAt)}`;
    case 'withdrawn':
      return 'withdrawn';
  }
}

export const LEVELS: Readonly<Record<HomeworkWish['level'], string>> = {
  small: 'Small circuits',
  middle: 'Middle',
  large: 'Large circuits',
};

export const HELP: Readonly<Record<HomeworkWish['help'], string>> = {
  none: 'No help',
  hints: 'A hint for each item',
};

export const REVIEW: Readonly<Record<HomeworkWish['review'], string>> = {
  'after-closing': 'After the set has closed',
  'after-submitting': 'As soon as the paper is handed in',
  never: 'Only with the tutor',
};

export const COUNTS: Readonly<Record<HomeworkWish['counts'], string>> = {
  best: 'The best attempt counts',
  last: 'The last attempt counts',
};

/** Questions by kind, as a tutor calls them. */
export const KINDS = {
  'lamp-states': 'lamps',
  'input-states': 'controller inputs',
  'relay-states': 'relays operated',
  wiring: 'wiring',
  meter: 'meter',
  sequence: 'sequence',
  'still-live': 'what stays live',
} as const;

/** A title as part of a file's name. */
export const fileName = (title: string, rest: string): string =>
  `${
    title
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '') || 'homework'
  }-${rest}`;
