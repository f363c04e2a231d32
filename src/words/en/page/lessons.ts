export const lessons = {};

export type LessonsWords = typeof lessons;
