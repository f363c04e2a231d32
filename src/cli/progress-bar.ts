import type { CommandWords } from '../words/commands.ts';
import type { Io } from './io.ts';
import { progressOf } from './store-place.ts';

export interface ProgressBar {
  /** Shows how far it has come. */
  show(done: number, total: number): void;
  /** Takes it away, before anything else is printed. */
  end(): void;
}

const WIDEST = 40;

export interface Come {
  /** What it is that takes long. */
  readonly what: string;
  readonly done: number;
  readonly total: number;
}

/** `Papers made  [########............]  12 of 30`, in no more than so many columns. */
export function barText({ progress }: CommandWords, { what, done, total }: Come, columns: number): string {
  const count = progress.done({ done, of: total });
  const width = Math.min(WIDEST, columns - what.length - count.length - 7);
  if (width < 8) return progress.told({ what, done: count }).slice(0, columns - 1);
  const full = total > 0 ? Math.floor((Math.min(done, total) / total) * width) : width;
  return `${what}  [${'#'.repeat(full)}${'.'.repeat(width - full)}]  ${count}`;
}

/** A bar for long work, which somebody at a terminal sees grow; elsewhere nothing is shown. */
export function progressBar(io: Io, what: string): ProgressBar {
  const { status } = io;
  if (!status) return { show: progressOf(io, what), end: () => undefined };
  let shown = '';
  return {
    show(done, total) {
      const text = barText(io.words, { what, done, total }, io.statusColumns ?? io.columns);
      if (text !== shown) status(text);
      shown = text;
    },
    end() {
      if (shown !== '') status('');
      shown = '';
    },
  };
}
