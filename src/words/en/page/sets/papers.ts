/** Everybody's papers, and one of them that is marked. */

import { speech } from '../../speech.ts';
import { earned as earnedMarks } from '../homework/figures.ts';
import { moments } from '../moments.ts';

const { when } = moments;

/** How a paper stands. */
export type PaperStands =
  | { readonly kind: 'handed-in'; readonly at: number }
  | { readonly kind: 'closed-with-answers' | 'nothing-handed-in' | 'not-begun' | 'begun' }
  | { readonly kind: 'working'; readonly items: number };

function standsText(stands: PaperStands): string {
  switch (stands.kind) {
    case 'handed-in':
      return `handed in ${when(stands.at)}`;
    case 'closed-with-answers':
      return 'closed with answers saved';
    case 'nothing-handed-in':
      return 'nothing handed in';
    case 'not-begun':
      return 'not begun';
    case 'begun':
      return 'begun';
    case 'working':
      return speech.plural(stands.items, {
        one: 'working, 1 item answered',
        other: `working, ${stands.items} items answered`,
      });
  }
}

interface Tried {
  /** From 1. */
  readonly item: number;
  readonly firstAt: number;
  readonly lastAt: number;
  readonly times: number;
}

const whenTried = ({ firstAt, lastAt, times }: Tried): string =>
  times > 1 ? `${when(firstAt)}; ${times} times in all, last ${when(lastAt)}` : when(firstAt);

export const papers = {
  stillBeingMarked: (count: number) =>
    speech.plural(count, {
      one: '1 paper is still being marked.',
      other: `${count} papers are still being marked.`,
    }),
  caption: 'Papers',
  attempt: 'Attempt',
  code: 'Code',
  stands: 'Stands',
  marks: 'Marks',
  perCent: 'Per cent',
  /** Which attempt it is (for narrow screens), how it stands, and how many items were tried elsewhere. */
  standsSo: ({ attempt, stands, tried }: { attempt: number; stands: PaperStands; tried: number }) => {
    const which = attempt > 1 ? `<attempt>attempt ${attempt}, </attempt>` : '';
    const elsewhere = speech.plural(tried, {
      one: '<tried>; tried 1 item elsewhere</tried>',
      other: `<tried>; tried ${tried} items elsewhere</tried>`,
    });
    return `${which}${standsText(stands)}${tried > 0 ? elsewhere : ''}`;
  },
  marksOf: ({ earned, outOf }: { earned: number; outOf: number }) => `${earnedMarks(earned)} of ${outOf}`,
  noMarks: '–',
  notMarked: 'not marked',
  one: {
    marks: ({ earned, outOf }: { earned: number; outOf: number }) =>
      `${earnedMarks(earned)} of ${outOf} marks`,
    paper: (code: string) => `Paper ${code}`,
    notHandedIn: 'Not handed in',
    byTutor: '* marked by the tutor; the reason stands with the item.',
    ideas: 'Wrong ideas that show',
    idea: ({ idea, times }: { idea: string; times: number }) =>
      times === 1 ? `${idea} (once)` : `${idea} (${times} times)`,
    set: 'The set',
    report: 'Report on the class',
  },
  ownMark: {
    title: 'Give it another mark',
    marks: (outOf: number) => `Marks of ${outOf}`,
    reason: 'Reason; the learner reads it',
    firstStays: 'The first mark stays beside it.',
    keep: 'Keep this mark',
  },
  /** Circuits of papers that were put in elsewhere. */
  tried: {
    title: 'Tried elsewhere',
    ofOne:
      'While the paper was open, circuits of these items were put into practice, Try it or Write. They were not marked or run there.',
    ofAll:
      'While the paper was open, circuits of it were put into practice, Try it or Write. They were not marked or run there. A marked paper says where and when.',
    in: {
      practice: (tried: Tried) => `Item ${tried.item} in practice: ${whenTried(tried)}`,
      'try-it': (tried: Tried) => `Item ${tried.item} in Try it: ${whenTried(tried)}`,
      write: (tried: Tried) => `Item ${tried.item} in Write: ${whenTried(tried)}`,
    },
    by: ({ items, attempt }: { items: number; attempt: number }) => {
      if (attempt <= 1)
        return speech.plural(items, { one: '{name}: 1 item', other: `{name}: ${items} items` });
      return speech.plural(items, {
        one: `{name}: 1 item of attempt ${attempt}`,
        other: `{name}: ${items} items of attempt ${attempt}`,
      });
    },
  },
};
