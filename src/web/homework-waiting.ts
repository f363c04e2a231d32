import { signal } from '@preact/signals';

/** Answers of homework that have not arrived at the server; known before the homework itself has been fetched. */
export const homeworkWaiting = signal(0);
