/** What the commands say: in their help, while they run, and when something is refused. */

import { comingBack } from '../coming-back.ts';
import { madeUp } from '../demo.ts';
import { store as kept } from '../store.ts';
import { ask } from './ask.ts';
import { backup } from './backup.ts';
import { bank } from './bank.ts';
import { classOf } from './class.ts';
import { course } from './course.ts';
import { demo } from './demo.ts';
import { draw } from './draw.ts';
import { drill } from './drill.ts';
import { files } from './files.ts';
import { given } from './given.ts';
import { help } from './help.ts';
import { homework } from './homework.ts';
import { homeworkPapers } from './homework-papers.ts';
import { homeworkReport } from './homework-report.ts';
import { learner } from './learner.ts';
import { mark } from './mark.ts';
import { marks } from './marks.ts';
import { moments } from './moments.ts';
import { named } from './named.ts';
import { numbers } from './numbers.ts';
import { outcome } from './outcome.ts';
import { pictures } from './pictures.ts';
import { problems } from './problems.ts';
import { program } from './program.ts';
import { progress } from './progress.ts';
import { question } from './question.ts';
import { rebuild } from './rebuild.ts';
import { serve } from './serve.ts';
import { solve } from './solve.ts';
import { store } from './store.ts';
import { timing } from './timing.ts';
import { trouble } from './trouble.ts';
import { values } from './values.ts';

export const commands = {
  // Each command's own.
  program,
  ask,
  backup,
  bank,
  class: classOf,
  demo,
  draw,
  drill,
  homework,
  homeworkPapers,
  homeworkReport,
  learner,
  mark,
  rebuild,
  serve,
  solve,
  timing,
  // What several say.
  course,
  files,
  given,
  help,
  kept,
  madeUp,
  marks,
  moments,
  named,
  numbers,
  outcome,
  pictures,
  problems,
  progress,
  question,
  store,
  trouble,
  values,
  comingBack,
};

export type CommandWords = typeof commands;
