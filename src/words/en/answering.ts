/** What there is to say once a question stands there: hints, marks, why. The page fetches this part after the first question. */
import { drawing } from './drawing.ts';
import { ideas } from './ideas.ts';
import { explaining, hints } from './questions/explaining.ts';
import { readings } from './readings.ts';

export const answering = { drawing, ideas, explaining, hints, readings };
