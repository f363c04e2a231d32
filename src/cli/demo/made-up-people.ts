/** The people of the demo: invented, and named so that nobody takes them for real. */
import type { CommandWords } from '../../words/commands.ts';

/** What they, their classes and their sets are called. */
export type MadeUpWords = CommandWords['madeUp'];
/** By what they sign in with, in whatever language they are named. */
export type MadeUpPerson = keyof MadeUpWords['people'];

export interface MadeUpLearner {
  readonly signIn: MadeUpPerson;
  /** 0 to 1: how far practice gets this learner. */
  readonly talent: number;
  /** The chance that a working day is a day of practice. */
  readonly diligence: number;
  /** The misconception behind most of the wrong answers; null: no particular one. */
  readonly leaning: string | null;
}

export interface MadeUpGroup {
  readonly id: keyof MadeUpWords['groups'];
  readonly learners: readonly MadeUpLearner[];
}

const learner = (
  signIn: MadeUpPerson,
  talent: number,
  diligence: number,
  leaning: string | null = null,
): MadeUpLearner => ({
  signIn,
  talent,
  diligence,
  leaning,
});

export const GROUPS: readonly MadeUpGroup[] = [
  {
    id: 'first',
    learners: [
      learner('ines.sifter', 0.95, 0.95),
      learner('tomas.hopper', 0.8, 0.9, 'second-relay-as-drawn'),
      learner('petra.bagger', 0.7, 0.8, 'make-for-break'),
      learner('olu.conveyor', 0.85, 0.7),
      learner('mara.bucket', 0.45, 0.75, 'make-for-break'),
      learner('jon.chute', 0.6, 0.35, 'seal-forgotten'),
      learner('lea.roller', 0.9, 0.9),
      learner('sam.scale', 0.55, 0.85, 'second-relay-as-drawn'),
      learner('nia.damper', 0.75, 0.8, 'both-legs-closed'),
      learner('ravi.filter', 0.65, 0.6, 'second-relay-as-drawn'),
      learner('eva.bolter', 0.8, 0.9, 'common-reference'),
      learner('finn.silo', 0.35, 0.2, 'nothing-moves'),
    ],
  },
  {
    id: 'second',
    learners: [
      learner('kim.auger', 0.95, 0.6),
      learner('ayo.blower', 0.9, 0.7),
      learner('dora.magnet', 0.85, 0.5, 'one-supply'),
      learner('max.bearing', 0.75, 0.6, 'timers-instant'),
    ],
  },
];

export const TUTOR = 'berta.millstone' satisfies MadeUpPerson;
export const ADMINISTRATOR = 'mill.office' satisfies MadeUpPerson;
