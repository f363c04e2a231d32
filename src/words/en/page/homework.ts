export const homework = {};

export type HomeworkWords = typeof homework;
