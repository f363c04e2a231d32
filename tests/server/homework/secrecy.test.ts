/**
 * Nothing that a learner is sent before submission tells an answer: everything that could is changed in the store, and every
 * byte of every reply has to stay as it was.
 */

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import { afterEach, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../../shared/api.ts';
import { homeworkRoutes } from '../../../shared/api-homework.ts';
import type { Paper } from '../../../shared/homework.ts';
import type { Question } from '../../../shared/question.ts';
import { storeFile } from '../../../src/store/index.ts';
import type { Tables } from '../../../src/store/schema.ts';
import { answersTo, type ClassServing, classServing, type Person } from './class-serving.ts';

const folders: string[] = [];
let serving: ClassServing;
afterEach(async () => {
  await serving.end();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

const file = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'polewise-secrecy-'));
  folders.push(folder);
  return storeFile(folder);
};

const { askHint, beginPaper, myHomework, paper: viewPaper, saveAnswers, submitPaper } = homeworkRoutes;

/** All of a set's skills, so that every kind of question is there. */
const EVERY_KIND = {
  skills: ['make-contact', 'status-lamps', 'relay-chains', 'controller-inputs', 'seal-in'],
  items: 15,
  help: 'hints',
  attempts: 1,
};

/** Every reply there is for a learner at work; bodies and headers. */
async function everyReply(learner: Person, set: string, paper: string): Promise<string> {
  const params = { paper };
  const replies = [
    await learner.ask(myHomework),
    await learner.ask(beginPaper, { params: { set } }),
    await learner.ask(viewPaper, { params }),
    ...(await Promise.all(
      Array.from({ length: 15 }, (_, item) => learner.ask(askHint, { params, body: { item } })),
    )),
    await learner.ask(apiRoutes.exportLearner),
    await learner.ask(apiRoutes.answers),
    await learner.ask(apiRoutes.lines),
    await learner.ask(apiRoutes.recalls),
    await learner.ask(apiRoutes.settings),
    // Refused, in words.
    await learner.ask(homeworkRoutes.reviewPaper, { params }),
    await learner.ask(homeworkRoutes.markedPaper, { params }),
    await learner.ask(homeworkRoutes.sampleHomework, { params: { set } }),
    await learner.ask(homeworkRoutes.homework, { params: { set } }),
    await learner.ask(homeworkRoutes.homeworkReport, { params: { set } }),
    await learner.ask(homeworkRoutes.statements, { params: { set } }),
    await learner.ask(homeworkRoutes.package30, { params: { set } }),
  ];
  return replies
    .map(({ statusCode, headers, body }) => {
      const { date: _, ...rest } = headers;
      return `${statusCode} ${JSON.stringify(rest)}\n${body}`;
    })
    .join('\n\n');
}

const OTHER = 'zzz-something-else';

/** A question with everything else that isn't asked: where it came from, and what a wiring has to come to. */
function otherwise(question: Question): Question {
  const changed = { ...question, family: OTHER, seed: OTHER };
  if (changed.kind === 'meter') return { ...changed, tolerance: changed.tolerance * 7 };
  return changed;
}

const changedPaper = (paper: Paper): Paper => ({
  ...paper,
  items: paper.items.map((item, at) => ({
    ...item,
    skill: OTHER,
    question: otherwise(item.question),
    circuit: `${OTHER}-${at}`,
    difficulty: item.difficulty + 13.37,
    secondsExpected: item.secondsExpected + 1234.5,
    draw: item.draw + 171,
  })),
});

describe('before submission', () => {
  it('no byte of any reply depends on what the paper was made from, nor on the secret', async () => {
    const place = file();
    serving = await classServing(1, { kind: 'file', file: place });
    const [learner] = serving.learners;
    const { set } = await serving.issued(EVERY_KIND);
    const { id } = await learner!.call(beginPaper, { params: { set: set.id } });
    const kept = (await serving.store.homework.paper(id))!;
    expect(new Set(kept.paper.items.map(({ question }) => question.kind)).size).toBe(7);
    const answers = (await answersTo(serving, { id }, 'right')).slice(0, 5);
    await learner!.call(saveAnswers, { params: { paper: id }, body: { answers } });
    // The first time it asks for the hints, which are told with the paper from then on.
    await everyReply(learner!, set.id, id);
    const before = await everyReply(learner!, set.id, id);

    for (const { skill, question, circuit, difficulty } of kept.paper.items) {
      // A seed makes the paper again, a fingerprint finds its like; difficulty and family say how it was made.
      for (const secret of [question.seed!, circuit, skill, `"${question.family}"`])
        expect(before).not.toContain(secret);
      if (!Number.isInteger(difficulty * 10)) expect(before).not.toContain(String(difficulty));
    }
    const secret = await serving.store.people.installation.secret();
    for (const coding of ['hex', 'base64', 'base64url'] as const)
      expect(before).not.toContain(secret.toString(coding));
    expect(before).not.toMatch(
      /"(seed|family|draw|difficulty|secondsExpected|wanted|tolerance|right|correct|share|misconceptions|explanation)":/,
    );

    const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database: new Database(place) }) });
    const paper_json = JSON.stringify(changedPaper(kept.paper));
    await db.updateTable('papers').set({ paper_json }).where('id', '=', id).execute();
    await db
      .updateTable('installation')
      .set({ value: Buffer.alloc(32, 7).toString('base64url') })
      .where('name', '=', 'secret')
      .execute();
    const { places } = set;
    const set_json = JSON.stringify({
      ...set,
      places: places.map((one) => ({ ...one, skill: OTHER, families: [OTHER], difficulty: 99, size: 1 })),
    });
    await db.updateTable('sets').set({ set_json }).where('id', '=', set.id).execute();
    await db.destroy();
    const after = await everyReply(learner!, set.id, id);
    const at = [...after].findIndex((letter, index) => letter !== before[index]);
    expect(at === -1 ? '' : after.slice(Math.max(0, at - 80), at + 80)).toBe('');
    expect(after.length).toBe(before.length);
  });

  it('saving right and wrong answers is replied to in the same bytes, and so is handing them in', async () => {
    const replies: string[][] = [];
    for (const right of [true, false]) {
      const place = file();
      serving = await classServing(1, { kind: 'file', file: place });
      const [learner] = serving.learners;
      const { set } = await serving.issued({ ...EVERY_KIND, review: 'after-closing' });
      const { id } = await learner!.call(beginPaper, { params: { set: set.id } });
      const { paper } = (await serving.store.homework.paper(id))!;
      const answers = (await answersTo(serving, { id }, 'right')).map((answer) => ({
        ...answer,
        answer: right ? answer.answer : wrong(answer.answer, paper.items[answer.item]!.question),
      }));
      const params = { paper: id };
      const told = [
        await learner!.ask(saveAnswers, { params, body: { answers } }),
        await learner!.ask(saveAnswers, { params, body: { answers } }),
        await learner!.ask(submitPaper, { params }),
        await learner!.ask(submitPaper, { params }),
        await learner!.ask(homeworkRoutes.reviewPaper, { params }),
        await learner!.ask(apiRoutes.answers),
        await learner!.ask(apiRoutes.lines),
        await learner!.ask(apiRoutes.recalls),
        await learner!.ask(myHomework),
      ];
      replies.push(
        told.map(({ statusCode, body }) =>
          `${statusCode} ${body}`.replaceAll(id, 'P').replaceAll(set.id, 'S'),
        ),
      );
      const mark = (await serving.store.homework.paper(id))!;
      await serving.app.close();
      expect(mark.submittedAt).not.toBeNull();
      if (right) await serving.end();
    }
    expect(replies[1]).toEqual(replies[0]);
  });
});

/** Another answer of the same form. */
function wrong(answer: Awaited<ReturnType<typeof answersTo>>[number]['answer'], question: Question) {
  switch (answer.kind) {
    case 'wiring':
      return {
        ...answer,
        choice: question.kind === 'wiring' ? ((answer.choice ?? 0) + 1) % question.choices.length : 0,
      };
    case 'meter':
      return { ...answer, volts: 7.5 };
    default:
      return {
        ...answer,
        states: Object.fromEntries(
          Object.entries(answer.states).map(([item, state]) => [item, OPPOSITE[state] ?? 'dim']),
        ),
      };
  }
}

const OPPOSITE: Readonly<Record<string, string>> = {
  lit: 'dark',
  dark: 'lit',
  '1': '0',
  '0': '1',
  operated: 'rest',
  rest: 'operated',
  live: 'dead',
  dead: 'live',
};
