/** Where to begin: asked on the first visit, and found in a few questions by whoever knows some of it. */
import type { Settings } from '../../../shared/settings.ts';
import { changeSettings } from '../../memory/index.ts';
import { MOST_PLACING, nextTask, type PlacingAnswer, placing } from '../../practice/index.ts';
import type { Io } from '../io.ts';
import { styleFor, wrapText } from '../style.ts';
import type { DrillOptions } from './options.ts';
import { goesOn, LEARNER, put, stops } from './put.ts';

/** What somebody wants who is here for the first time; undefined when it is to stop. */
export async function wantsPlacing(io: Io): Promise<boolean | undefined> {
  const { placing: said } = io.words.drill;
  io.out(said.whereToBegin({ most: MOST_PLACING }));
  for (;;) {
    const line = (await io.question(styleFor(io).strong(said.prompt)))?.trim();
    if (line === undefined || stops(line)) return undefined;
    if (line === '' || line === '1') return false;
    if (line === '2') return true;
    io.out(said.oneOrTwo);
  }
}

/** Asks until it is known where to begin, or the learner has enough, and keeps what was found with the settings. */
export async function place(options: DrillOptions, io: Io): Promise<Settings> {
  const { placing: said } = io.words.drill;
  const { course, store, seed } = options;
  const style = styleFor(io);
  const before = [...(await store.answersOf(LEARNER))];
  const seen = new Set(before.map(({ circuit }) => circuit));
  const answers: PlacingAnswer[] = [];
  for (;;) {
    const next = placing(course.graph, answers);
    if (next.kind === 'found') break;
    const recalls = await store.recallsOf(LEARNER);
    const made = nextTask({
      course,
      recalls,
      at: io.now(),
      seed: `${seed}/placing`,
      number: answers.length,
      recent: [],
      seen,
      only: next.skill,
    });
    if (!made.ok) break;
    const { task } = made;
    const which = said.questionOf({ number: answers.length + 1, most: MOST_PLACING });
    const heading = `${style.strong(which)}  ${course.skills.get(task.skill)?.title ?? task.skill}`;
    const judged = await put(task, heading, { store, recalls, before }, io);
    if (!judged) break;
    before.push(judged.record);
    seen.add(task.circuit);
    answers.push({ skill: task.skill, right: judged.mark.correct && !judged.record.attempt.help.hint });
    if (placing(course.graph, answers).kind === 'ask' && !(await goesOn(io))) break;
  }
  const found = placing(course.graph, answers, 0);
  const known = found.kind === 'found' ? found.known : [];
  const had = await store.settingsOf(LEARNER);
  const at = io.now();
  const placement = { at, known: [...known] };
  const kept = await store.putSettings(LEARNER, changeSettings(had, { placement }, at));
  if (known.length === 0) io.out(`${said.atTheBeginning}\n`);
  else {
    io.out(style.strong(said.known({ known: known.length, of: course.graph.skills.length })));
    for (const id of known) io.out(`  ${course.skills.get(id)?.title ?? id}`);
    io.out(`${wrapText(said.theyComeBack, io.columns)}\n`);
  }
  return kept;
}
