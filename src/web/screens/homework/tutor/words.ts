import type { SetState } from '../../../../../shared/homework-views.ts';
import { words } from '../../../words.ts';

/** Where a set stands, in words. */
export const stateText = (
  state: SetState,
  times: { readonly opensAt: number; readonly closesAt: number },
): string => words('sets').states.stands[state](times);

/** A title as part of a file's name. */
export const fileName = (title: string, rest: string): string =>
  `${
    title
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '') || words('sets').one.downloads.untitled
  }-${rest}`;
