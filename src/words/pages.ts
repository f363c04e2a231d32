/** The page's words, by language and part: each part is fetched with the screens that speak it. */
import type { IdeaWords } from './en/ideas.ts';
import type { AccountWords } from './en/page/account.ts';
import type { BenchWords } from './en/page/bench.ts';
import type { ClassesWords } from './en/page/classes.ts';
import type { EnterWords } from './en/page/enter.ts';
import type { FirstWords } from './en/page/first.ts';
import type { HomeworkWords } from './en/page/homework.ts';
import type { LessonsWords } from './en/page/lessons.ts';
import type { ProgressWords } from './en/page/progress.ts';
import type { SetsWords } from './en/page/sets.ts';
import type { TryWords } from './en/page/try.ts';

export interface PageWords {
  /** The frame, what every screen uses, and practising: what the first question needs. */
  readonly first: FirstWords;
  readonly lessons: LessonsWords;
  readonly progress: ProgressWords;
  /** Wrong ideas, where answers are looked back at. */
  readonly ideas: IdeaWords;
  readonly account: AccountWords;
  readonly enter: EnterWords;
  readonly try: TryWords;
  readonly bench: BenchWords;
  readonly classes: ClassesWords;
  /** A learner's homework. */
  readonly homework: HomeworkWords;
  /** A tutor's: sets, papers, reports. */
  readonly sets: SetsWords;
}

export type PagePart = keyof PageWords;

/** How a language's parts are fetched. */
export type PageLanguage = { readonly [P in PagePart]: () => Promise<PageWords[P]> };

export const PAGE_LANGUAGES: Readonly<Record<string, PageLanguage>> = {
  en: {
    first: () => import('./en/page/first.ts').then(({ first }) => first),
    lessons: () => import('./en/page/lessons.ts').then(({ lessons }) => lessons),
    progress: () => import('./en/page/progress.ts').then(({ progress }) => progress),
    ideas: () => import('./en/ideas.ts').then(({ ideas }) => ideas),
    account: () => import('./en/page/account.ts').then(({ account }) => account),
    enter: () => import('./en/page/enter.ts').then(({ enter }) => enter),
    try: () => import('./en/page/try.ts').then(({ tryIt }) => tryIt),
    bench: () => import('./en/page/bench.ts').then(({ bench }) => bench),
    classes: () => import('./en/page/classes.ts').then(({ classes }) => classes),
    homework: () => import('./en/page/homework.ts').then(({ homework }) => homework),
    sets: () => import('./en/page/sets.ts').then(({ sets }) => sets),
  },
};
