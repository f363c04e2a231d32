/** The people of the demo: invented, and named so that nobody takes them for real. */
export interface MadeUpLearner {
  readonly name: string;
  readonly signIn: string;
  /** 0 to 1: how far practice gets this learner. */
  readonly talent: number;
  /** The chance that a working day is a day of practice. */
  readonly diligence: number;
  /** The misconception behind most of the wrong answers; null: no particular one. */
  readonly leaning: string | null;
}

export interface MadeUpGroup {
  readonly title: string;
  readonly intake: string;
  readonly learners: readonly MadeUpLearner[];
}

const learner = (
  name: string,
  talent: number,
  diligence: number,
  leaning: string | null = null,
): MadeUpLearner => ({
  name,
  signIn: name.toLowerCase().replaceAll(' ', '.'),
  talent,
  diligence,
  leaning,
});

export const GROUPS: readonly MadeUpGroup[] = [
  {
    title: 'Flour line fitters (made up)',
    intake: 'Autumn',
    learners: [
      learner('Ines Sifter', 0.95, 0.95),
      learner('Tomas Hopper', 0.8, 0.9, 'second-relay-as-drawn'),
      learner('Petra Bagger', 0.7, 0.8, 'make-for-break'),
      learner('Olu Conveyor', 0.85, 0.7),
      learner('Mara Bucket', 0.45, 0.75, 'make-for-break'),
      learner('Jon Chute', 0.6, 0.35, 'seal-forgotten'),
      learner('Lea Roller', 0.9, 0.9),
      learner('Sam Scale', 0.55, 0.85, 'second-relay-as-drawn'),
      learner('Nia Damper', 0.75, 0.8, 'both-legs-closed'),
      learner('Ravi Filter', 0.65, 0.6, 'second-relay-as-drawn'),
      learner('Eva Bolter', 0.8, 0.9, 'common-reference'),
      learner('Finn Silo', 0.35, 0.2, 'nothing-moves'),
    ],
  },
  {
    title: 'Flour line fitters, second year (made up)',
    intake: 'Spring',
    learners: [
      learner('Kim Auger', 0.95, 0.6),
      learner('Ayo Blower', 0.9, 0.7),
      learner('Dora Magnet', 0.85, 0.5, 'one-supply'),
      learner('Max Bearing', 0.75, 0.6, 'timers-instant'),
    ],
  },
];

export const TUTOR = { name: 'Berta Millstone', signIn: 'berta.millstone' } as const;
export const ADMINISTRATOR = { name: 'Mill office', signIn: 'mill.office' } as const;
