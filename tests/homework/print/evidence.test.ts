import { describe, expect, it } from 'vitest';
import type { ProofSource } from '../../../shared/issued.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import {
  competenceMatrix,
  countedAnswers,
  markPaper,
  papersFor,
  recordsOf,
} from '../../../src/homework/index.ts';
import { type EvidenceRequest, evidencePdf, standingsOf } from '../../../src/homework/print/index.ts';
import { proofsOf } from '../../../src/homework/print/proving-answers.ts';
import { blankAnswer, rightAnswer, tellAnswer } from '../../../src/questions/index.ts';
import { english } from '../../../src/words/en/core.ts';
import { CLOSES, course, HOUR, OPENS, places, seats, setOf } from '../course.ts';
import { readPdf, together } from './read-pdf.ts';

const skills = [...course.skills.keys()];
const set = setOf(places(skills, 25));
/** Everything right but the items on controller inputs, which are left out, and those on seal-in, which are wrong. */
const records: readonly AnswerRecord[] = (() => {
  const made = papersFor(set, seats(1));
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const [paper] = made.value;
  const saved = paper!.items.flatMap(({ skill, question }, item) => {
    if (skill === 'controller-inputs') return [];
    const right = rightAnswer(question);
    const wrong =
      skill === 'seal-in' && 'states' in right
        ? { ...blankAnswer(question), states: { [Object.keys(right.states)[0]!]: 'dim' } }
        : right;
    return [{ item, answer: wrong as typeof right, at: OPENS + HOUR, secondsUsed: null, hint: false }];
  });
  const counted = countedAnswers(set, saved);
  return recordsOf(paper!, markPaper(paper!, counted), counted, CLOSES, (item) => `record-${item}`);
})();

const DAY = 24 * HOUR;
const day = (at: number): string => new Date(at).toISOString().slice(0, 10);
const standings = (at: number) =>
  standingsOf(course, competenceMatrix(course, [{ id: 'ada', histories: [records] }], at), 'ada');
const proving = (answers: readonly AnswerRecord[], source: ProofSource = 'homework') =>
  answers.map((record) => ({ record, source }));
const request = (at: number, more: Partial<EvidenceRequest> = {}): EvidenceRequest => ({
  words: english,
  person: { name: 'Ada Northfield' },
  organisation: 'Flour line training',
  madeAt: '12 October 2025',
  made: new Date(0),
  day,
  skills: standings(at),
  wanted: 'any',
  answers: proving(records),
  ...more,
});
const soon = CLOSES + HOUR;

describe('evidence for one person', () => {
  it('has name, organisation, date and what this is not on every page', async () => {
    const { pages } = readPdf(await evidencePdf(request(soon)));
    expect(pages.length).toBeGreaterThan(1);
    pages.forEach((page, index) => {
      for (const text of [
        'Ada Northfield',
        'Flour line training',
        '12 October 2025',
        `${index + 1} of ${pages.length}`,
      ])
        expect(page).toContain(text);
      expect(together(page)).toContain('It is no instruction to work on live equipment');
    });
  });

  it('says how every skill stands, when it was proven and when a refresher is due', async () => {
    const rows = standings(soon);
    expect(rows.map(({ competence }) => competence.kind).toSorted()).toEqual([
      'held',
      'held',
      'held',
      'not-yet',
      'not-yet',
    ]);
    const [first] = readPdf(await evidencePdf(request(soon))).pages;
    for (const { title, competence } of rows) {
      const at = first!.indexOf(title);
      expect(at).toBeGreaterThan(0);
      expect(first!.slice(at + 1, at + 3)).toEqual(
        competence.kind === 'held'
          ? ['held', day(competence.provenAt)]
          : ['not yet', expect.stringMatching(/begun$/)],
      );
      if (competence.kind === 'held') expect(first!.slice(at + 3, at + 5)).toContain(day(competence.dueAt));
    }
  });

  it('says which language a skill is written in, where it is another one than its own', async () => {
    const rows = standings(soon);
    const german = rows.map((row, at) => (at === 0 ? { ...row, language: 'de' } : row));
    const marked = readPdf(await evidencePdf(request(soon, { skills: german }))).streams[0]!;
    const lines = marked.match(/\/Span <<\n\/Lang \(\w+\)\n>> BDC/g);
    expect(lines).toEqual([expect.stringContaining('(de)')]);
    expect(readPdf(await evidencePdf(request(soon))).streams[0]).not.toContain('/Lang');
  });

  it('says what it shows and what it does not', async () => {
    const [first] = readPdf(await evidencePdf(request(soon))).pages;
    expect(together(first!)).toContain(
      'It shows that somebody read these drawings rightly on those days. It does not show that somebody can work safely on a panel, and is no authorisation to.',
    );
  });

  it('shows the drawings that proved each skill that is held, with answer, right answer and date', async () => {
    const { pages } = readPdf(await evidencePdf(request(soon)));
    const text = pages.map(together).join(' ');
    let drawing = 0;
    for (const standing of standings(soon)) {
      const { competence, title } = standing;
      if (competence.kind !== 'held') {
        expect(text).not.toContain(`: ${title}`);
        continue;
      }
      const proofs = proofsOf(standing, proving(records));
      expect(proofs.map(({ circuit }) => circuit)).toEqual(competence.provenOn);
      for (const { circuit, answer } of proofs) {
        expect(answer!.record.circuit).toBe(circuit);
        expect(text).toContain(`Drawing ${++drawing}: ${title}`);
        expect(text).toContain(`${day(answer!.record.at)} circuit ${circuit.slice(0, 8)}`);
        for (const { given, right } of answer!.record.mark.parts)
          expect(text).toContain(`${tellAnswer(english, given!)} ${tellAnswer(english, right)}`);
      }
    }
    expect(drawing).toBe(11);
    expect(text).not.toContain(`Drawing ${drawing + 1}:`);
  });

  it('says of each drawing where its proof comes from, and which proofs count', async () => {
    const half = records.length / 2;
    const answers = [
      ...proving(records.slice(0, half), 'supervised'),
      ...proving(records.slice(half), 'issued'),
    ];
    const textOf = async (more: Partial<EvidenceRequest>): Promise<string> =>
      readPdf(await evidencePdf(request(soon, more)))
        .pages.map(together)
        .join(' ');
    const all = await textOf({ answers });
    expect(all).toContain('% right; homework under supervision');
    expect(all).toContain('% right; practice, question issued to the learner');
    expect(all).toContain('What else was practised is the learner’s own and proves nothing.');
    expect(await textOf({ wanted: 'supervised' })).toContain(
      'It counts only homework that was sat under supervision, by the word of its tutor.',
    );
    expect(await textOf({})).toContain('% right; homework');
  });

  it('shows no drawing for what is fading, and names its circuits', async () => {
    const late = soon + 400 * DAY;
    const fading = standings(late).filter(({ competence }) => competence.kind === 'fading');
    expect(fading.length).toBeGreaterThan(0);
    const text = readPdf(await evidencePdf(request(late)))
      .pages.map(together)
      .join(' ');
    for (const { title, competence } of fading) {
      expect(text).toContain(`${title} fading`);
      expect(text).not.toContain(`: ${title}`);
      if (competence.kind === 'fading')
        for (const circuit of competence.provenOn) expect(text).toContain(circuit.slice(0, 8));
    }
  });

  it('says where a drawing that proved a skill is not among the answers', async () => {
    const [first, ...others] = records;
    const text = readPdf(await evidencePdf(request(soon, { answers: proving(others) })))
      .pages.map(together)
      .join(' ');
    expect(text.match(/This drawing is not among the answers/g)).toHaveLength(1);
    expect(text).toContain(first!.circuit.slice(0, 8));
  });

  it('is a page of plain facts for somebody who has answered nothing', async () => {
    const { pages } = readPdf(
      await evidencePdf(
        request(soon, {
          answers: [],
          skills: standingsOf(course, competenceMatrix(course, [{ id: 'ben', histories: [] }], soon), 'ben'),
        }),
      ),
    );
    expect(pages).toHaveLength(1);
    expect(pages[0]!.filter((text) => text === 'not yet')).toHaveLength(skills.length);
    expect(standingsOf(course, competenceMatrix(course, [], soon), 'nobody')).toEqual([]);
  });
});
