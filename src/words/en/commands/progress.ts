/** How far long work has come. */
export const progress = {
  copied: 'Copied',
  lookedThrough: 'Looked through',
  marked: 'Marked',
  rebuilt: 'Rebuilt',
  madeUp: 'Making up three weeks of work',
  papersMade: 'Papers made',
  papersMarked: 'Papers marked',
  papersDrawn: 'Papers drawn',
  answersWritten: 'Answers written',
  percent: ({ what, percent }: { what: string; percent: number }) => `${what}: ${percent} %`,
  done: ({ done, of }: { done: number; of: number }) => `${done} of ${of}`,
  told: ({ what, done }: { what: string; done: string }) => `${what}: ${done}`,
};
