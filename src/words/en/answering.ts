/** What there is to say once a question stands there: hints, marks, why. The page fetches this part after the first question. */
import { drawing } from './drawing.ts';
import { ideas } from './ideas.ts';
import { circuitProblems } from './problems/circuit.ts';
import { memoryProblems } from './problems/memory.ts';
import { questionProblems } from './problems/questions.ts';
import { ruleProblems } from './problems/rules.ts';
import { explaining, hints } from './questions/explaining.ts';
import { readings } from './readings.ts';

/** What can be wrong with answers, with plans, and with circuits that somebody writes. */
const problems = { ...questionProblems, ...memoryProblems, ...circuitProblems, ...ruleProblems };

export const answering = { drawing, ideas, explaining, hints, readings, problems };
