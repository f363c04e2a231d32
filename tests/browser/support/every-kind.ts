/** One question of every kind, and the open question of a device set to it. */
import type { Page } from 'playwright-core';
import { PROFILES } from '../../../src/drawing/index.ts';
import { type Course, courseOf, nextTask, type Task } from '../../../src/practice/index.ts';
import { circuitAsked } from '../../../src/web/engine/shown-circuit.ts';
import { askQuestion, layOut } from '../../support/in-english.ts';
import { ownBank } from '../../support/own-bank.ts';

/** By kind; those with waits in them by themselves, for they show a timing diagram. */
export function everyKind(): ReadonlyMap<string, Task> {
  const found = new Map<string, Task>();
  for (const task of someTasks(ownCourse())) {
    const { kind, scenario } = task.question;
    const name = scenario.acts.some((act) => act.kind === 'wait') ? `${kind} with waits` : kind;
    if (!found.has(name)) found.set(name, task);
  }
  return found;
}

function ownCourse(): Course {
  const course = courseOf(ownBank());
  if (!course.ok) throw new Error(JSON.stringify(course.problems));
  return course.value;
}

/** Questions of these skills in turn, of all where none are named. */
function* someTasks(
  course: Course,
  skills: readonly string[] = [...course.skills.keys()],
  most = 4 * skills.length,
): Generator<Task> {
  for (let number = 0; number < most; number++) {
    const skill = skills[number % skills.length]!;
    const begun = {
      kind: 'begun' as const,
      stability: 3,
      difficulty: 5,
      firstAt: 0,
      lastAt: 0,
      reviews: 3,
      lapses: 0,
      // Half grown, so that circuits have several sheets.
      lostLately: 0,
      earned: 4,
      evidence: 2000,
      circuits: ['one', 'another'],
    };
    const made = nextTask({
      course,
      recalls: new Map([[skill, begun]]),
      at: 1,
      seed: 'every-kind',
      number,
      recent: [],
      seen: new Set(),
      only: skill,
    });
    if (made.ok) yield made.task;
  }
}

/** A wiring that is drawn on one sheet on a phone, so that both conductors are laid over the drawing in full. */
export function wiringOnOneSheet(): Task {
  for (const task of someTasks(ownCourse(), ['changeover-wiring'], 200))
    if (task.question.kind === 'wiring' && layOut(task.question.circuit, PROFILES.phone).sheets.length === 1)
      return task;
  throw new Error('no wiring is drawn on one sheet');
}

/** A wiring with a choice, by its index, of which the first conductor goes on on another sheet of the drawing on a phone. */
export function wiringOverSheets(): { task: Task; choice: number } {
  for (const task of someTasks(ownCourse(), ['changeover-wiring'], 200)) {
    const { question } = task;
    if (question.kind !== 'wiring') continue;
    const { sheets } = layOut(circuitAsked(question.circuit, askQuestion(question)), PROFILES.phone);
    const on = (terminal: string): number =>
      sheets.findIndex(({ symbols }) =>
        symbols.some(({ ports }) => ports.some((port) => port.terminal === terminal)),
      );
    const choice = question.choices.findIndex(([first]) => on(first) !== on(question.ends[0]));
    if (choice >= 0) return { task, choice };
  }
  throw new Error('every wiring is drawn on one sheet');
}

/** Makes this the question that was open when the page was last left, and opens it. */
export async function openTask(page: Page, task: Task): Promise<void> {
  await page.evaluate(
    (open) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('polewise');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const kept = opening.result.transaction('values', 'readwrite');
          kept.objectStore('values').put(open, 'open');
          kept.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    { task, number: 7, recent: [], chosen: [], hinted: false, secondsUsed: 0 },
  );
  await page.reload();
  await page.waitForSelector('.question .bar button[type=submit]');
}
