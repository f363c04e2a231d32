/** One question of every kind, and the open question of a device set to it. */
import type { Page } from 'playwright-core';
import { courseOf, nextTask, type Task } from '../../../src/practice/index.ts';
import { ownBank } from '../../support/own-bank.ts';

/** By kind; those with waits in them by themselves, for they show a timing diagram. */
export function everyKind(): ReadonlyMap<string, Task> {
  const course = courseOf(ownBank());
  if (!course.ok) throw new Error(JSON.stringify(course.problems));
  const found = new Map<string, Task>();
  const skills = [...course.value.skills.keys()];
  for (let number = 0; number < 4 * skills.length; number++) {
    const skill = skills[number % skills.length]!;
    const begun = {
      kind: 'begun' as const,
      stability: 1,
      difficulty: 5,
      firstAt: 0,
      lastAt: 0,
      reviews: 3,
      lapses: 0,
      provenOn: [],
    };
    const made = nextTask({
      course: course.value,
      recalls: new Map([[skill, begun]]),
      at: 1,
      seed: 'every-kind',
      number,
      recent: [],
      seen: new Set(),
      only: skill,
    });
    if (!made.ok) continue;
    const { kind, scenario } = made.task.question;
    const name = scenario.acts.some((act) => act.kind === 'wait') ? `${kind} with waits` : kind;
    if (!found.has(name)) found.set(name, made.task);
  }
  return found;
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
