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
  /** With the mark of a question, where its skill went wrong twice in a row. */
  helps: {
    title: 'From the lesson',
    why: 'This skill went wrong twice in a row. Here is the part of the lesson that helps; it comes back with a smaller circuit.',
    whole: 'The whole lesson',
  },
};

export type LessonsWords = typeof lessons;
