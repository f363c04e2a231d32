export const classes = {};

export type ClassesWords = typeof classes;
