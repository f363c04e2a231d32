import { speech } from '../speech.ts';

export const lessons = {
  title: 'Lessons',
  all: 'All lessons',
  skills: (count: number) =>
    speech.plural(count, { one: '1 skill to practise', other: '# skills to practise' }),
  placeOf: ({ at, of }: { at: number; of: number }) => `Lesson ${at} of ${of}`,
  practise: 'Practise',
  next: (title: string) => `Next lesson: ${title}`,
  tryThis: 'Try this circuit',
  check: 'Check',
};

export type LessonsWords = typeof lessons;
