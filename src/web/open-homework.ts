import { signal } from '@preact/signals';

/** What a learner has to do of homework, in a line; empty where there is nothing. Known before homework is looked at. */
export const openHomework = signal('');
