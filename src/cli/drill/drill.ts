/** The drill: question after question in the terminal until the count is reached or the learner stops. */

import type { AnswerRecord } from '../../../shared/practice.ts';
import type { Recalls } from '../../memory/index.ts';
import { bothLeft, ideasTold, lessonFor, nextTask, summarise, wantsLesson } from '../../practice/index.ts';
import { coreWordsOf } from '../core-words.ts';
import type { Io } from '../io.ts';
import { styleFor } from '../style.ts';
import { lessonText } from './lesson-text.ts';
import type { DrillOptions } from './options.ts';
import { place, wantsPlacing } from './placement.ts';
import { goesOn, LEARNER, put } from './put.ts';
import { summaryText } from './summary-text.ts';

/** Runs a whole practice. */
export async function runDrill(options: DrillOptions, io: Io): Promise<void> {
  const { course, store, seed, count, skill } = options;
  const { drill: said } = io.words;
  const style = styleFor(io);
  let settings = await store.settingsOf(LEARNER);
  const first = (await store.answersOf(LEARNER)).length === 0 && !settings.placement;
  const asks = first && io.interactive && skill === undefined;
  const finds = options.place || (asks ? await wantsPlacing(io) : false);
  if (finds === undefined) {
    io.out(said.nothingAskedYet);
    return;
  }
  if (finds) settings = await place(options, io);

  const before = await store.answersOf(LEARNER);
  const seen = new Set(before.map(({ circuit }) => circuit));
  let recalls: Recalls = await store.recallsOf(LEARNER);
  const given: AnswerRecord[] = [];
  const recent: string[] = [];
  const ideasLeft = (wanted: string) =>
    bothLeft(ideasTold([...before, ...given].filter((record) => record.skill === wanted)));
  for (let number = 0; number < count; number++) {
    const next = nextTask({
      course,
      recalls,
      at: io.now(),
      seed,
      number,
      recent,
      seen,
      ideasLeft,
      placement: settings.placement,
      newADay: settings.newSkillsADay,
      ...(skill ? { only: skill } : {}),
    });
    if (!next.ok) {
      io.out(next.skill === undefined ? said.nothingMore : said.noCircuit(next.skill));
      break;
    }
    const { task } = next;
    const title = course.skills.get(task.skill)?.title ?? task.skill;
    const about = said.about({ skill: title, why: said.why[task.why] });
    const heading = `${style.strong(said.questionOf({ number: number + 1, of: count }))}  ${about}`;
    const judged = await put(task, heading, { store, recalls, before: [...before, ...given] }, io);
    if (!judged) break;
    recalls = new Map([...recalls, [task.skill, judged.recall]]);
    given.push(judged.record);
    const lesson = wantsLesson([...before, ...given]) ? lessonFor(course.bank, task.skill) : undefined;
    if (lesson) io.out(`${lessonText(lesson, io)}\n`);
    recent.push(task.skill);
    seen.add(task.circuit);
    if (number + 1 < count && !(await goesOn(io))) break;
  }
  io.out(summaryText(summarise(course, given, recalls, io.now()), given.length, await coreWordsOf(io), io));
}
