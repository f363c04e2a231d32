/**
 * Reads a line of text as an answer to a question about states. Understood are pairs (`H1 lit, H2 dark`), lists under a
 * state (`lit: H1 H3`), one word for all (`none`, `all dark`) and states in the order asked (`1 0 1`, `101`).
 */
import type { Checked, Problem } from '../../../shared/problem.ts';
import type { QuestionProblemSaid, StateName, Words } from '../../words/index.ts';
import { byMoments, type Entry, entriesOf, type StatesQuestion } from '../entries.ts';
import { questionProblem } from '../problem-codes.ts';
import { findEntry, namesOf } from './find-entry.ts';
import { type StateWords, stateWordsOf } from './state-words.ts';
import { type Token, tokensOf } from './tokens.ts';

const SIGNS_OF_NOTHING = ['?', '_', '.', '-', 'x'];
const has = (list: readonly string[], word: string): boolean => list.includes(word.toLowerCase());

class StatesReading {
  readonly entries: readonly Entry[];
  readonly problems: Problem[] = [];
  readonly states = new Map<string, StateName>();
  /** States that stood before a list: what they were not said of stands the other way. */
  private readonly listed = new Set<number>();
  private readonly question: StatesQuestion;
  private readonly stateWord: StateWords;
  readonly typed: Words['typed'];

  constructor(question: StatesQuestion, words: Words) {
    this.question = question;
    this.typed = words.typed;
    this.stateWord = stateWordsOf(words);
    this.entries = entriesOf(question);
  }

  problem(said: QuestionProblemSaid): void {
    if (this.problems.length < 20) this.problems.push(questionProblem(said));
  }

  get names(): string {
    return namesOf(this.question, this.entries);
  }

  /** Whether a word says that none of them, that all, or that this one isn't answered. */
  saysNone = (word: string): boolean => has(this.typed.none, word);
  saysAll = (word: string): boolean => has(this.typed.all, word);
  saysNothing = (word: string): boolean => has(SIGNS_OF_NOTHING, word) || has(this.typed.skip, word);

  give(entry: Entry, word: string): void {
    const state = this.stateWord(entry.kind, word);
    if (state === undefined) {
      this.problem({ says: 'answer-unknown-word', word, item: entry.item, choices: entry.choices });
      return;
    }
    const before = this.states.get(entry.key);
    if (before !== undefined && before !== state)
      this.problem({ says: 'answer-twice', item: entry.item, states: [before, state] });
    this.states.set(entry.key, state);
  }

  /** The index of a state among the kind's states; every kind asked together must know the word. */
  isState(word: string): boolean {
    return this.entries.some(({ kind }) => this.stateWord(kind, word) !== undefined);
  }

  /** `1 0 1`, `101`, `lit - dark`: in the order asked. */
  inOrder(words: readonly string[], after: number | undefined): void {
    const entries = this.entries.filter((entry) => after === undefined || entry.after === after);
    const run = words.length === 1 && /^[01?_-]{2,}$/.test(words[0]!) ? [...words[0]!] : words;
    if (run.length !== entries.length) {
      this.problem({
        says: 'answer-count',
        states: run.length,
        things: entries.length,
        asked: namesOf(this.question, entries),
      });
      return;
    }
    run.forEach((word, index) => {
      if (!this.saysNothing(word)) this.give(entries[index]!, word);
    });
  }

  all(word: string | undefined, after: number | undefined): void {
    for (const entry of this.entries) {
      if (after !== undefined && entry.after !== after) continue;
      this.give(entry, word ?? entry.choices[0]!);
    }
  }

  /** None in a state: all in the other of the first two. */
  none(word: string | undefined, after: number | undefined): void {
    for (const entry of this.entries) {
      if (after !== undefined && entry.after !== after) continue;
      const said = word === undefined ? entry.choices[0]! : this.stateWord(entry.kind, word);
      this.give(entry, said === entry.choices[1] ? entry.choices[0]! : entry.choices[1]!);
    }
  }

  find(word: string, after: number | undefined): Entry | undefined {
    const found = findEntry(this.entries, word, after);
    if (found.kind === 'one') return found.entry;
    if (found.kind === 'none')
      this.problem(
        after === undefined
          ? { says: 'answer-unknown-item', word, asked: this.names }
          : { says: 'answer-unknown-item.after', word, after, asked: this.names },
      );
    else
      this.problem(
        byMoments(this.question)
          ? { says: 'answer-ambiguous.step', word }
          : { says: 'answer-ambiguous', word, items: found.entries.map(({ item }) => item) },
      );
    return undefined;
  }

  /** What is left when only some were named, all of them in one state, belongs to the other state. */
  completeLists(): void {
    for (const after of new Set(this.entries.map((entry) => entry.after))) {
      if (!this.listed.has(after)) continue;
      const here = this.entries.filter((entry) => entry.after === after);
      const given = new Set(
        here.flatMap(({ key, choices }) =>
          this.states.has(key) ? [choices.indexOf(this.states.get(key)!)] : [],
        ),
      );
      const [only] = given;
      if (given.size !== 1 || only === undefined || only > 1) continue;
      for (const { key, choices } of here)
        if (!this.states.has(key)) this.states.set(key, choices[1 - only]!);
    }
  }

  list(after: number | undefined): void {
    for (const entry of this.entries)
      if (after === undefined || entry.after === after) this.listed.add(entry.after);
  }
}

/** One part of an answer, all about the same point of the scenario. */
function readPart(reading: StatesReading, tokens: readonly Token[], after: number | undefined): void {
  const words = tokens.map(({ text }) => text);
  const [first = '', second] = words;
  const stateFirst = reading.isState(first) && findEntry(reading.entries, first, after).kind === 'none';
  const named = words.filter(
    (word) => !reading.isState(word) && !reading.saysNothing(word) && !/^[01?_-]{2,}$/.test(word),
  );
  if (reading.saysNone(first) && words.length <= 2) reading.none(second, after);
  else if (reading.saysAll(first) && words.length <= 2) reading.all(second, after);
  else if (stateFirst && words.length === 2 && reading.saysNone(second!)) reading.none(first, after);
  else if (stateFirst && words.length === 2 && reading.saysAll(second!)) reading.all(first, after);
  else if (named.length === 0) reading.inOrder(words, after);
  else if (named.length === words.length) readList(reading, words, after);
  else if (stateFirst) readStateFirst(reading, tokens, after);
  else readItemsFirst(reading, tokens, after);
}

/** Names alone: those are the ones asked for. */
function readList(reading: StatesReading, words: readonly string[], after: number | undefined): void {
  for (const word of words) {
    const entry = reading.find(word, after);
    if (entry) reading.give(entry, entry.choices[0]!);
  }
  reading.list(after);
}

function readStateFirst(reading: StatesReading, tokens: readonly Token[], after: number | undefined): void {
  let state = '';
  for (const { text } of tokens) {
    if (reading.isState(text) && findEntry(reading.entries, text, after).kind === 'none') state = text;
    else if (!reading.saysNone(text)) {
      const entry = reading.find(text, after);
      if (entry) reading.give(entry, state);
    }
  }
  reading.list(after);
}

function readItemsFirst(reading: StatesReading, tokens: readonly Token[], after: number | undefined): void {
  let waiting: Entry[] = [];
  let lost = false;
  for (const { text } of tokens) {
    if (waiting.length + Number(lost) > 0 && (reading.isState(text) || reading.saysNothing(text))) {
      if (!reading.saysNothing(text)) for (const entry of waiting) reading.give(entry, text);
      waiting = [];
      lost = false;
      continue;
    }
    const entry = reading.find(text, after);
    if (entry) waiting.push(entry);
    else lost = true;
  }
  for (const { item, choices } of waiting) reading.problem({ says: 'answer-without-state', item, choices });
}

/** Parts of an answer to a sequence: `after 1: …; after 2: …`, `start: …`. */
function byStep(
  { typed }: StatesReading,
  tokens: readonly Token[],
): { after: number | undefined; tokens: Token[] }[] {
  const parts: { after: number | undefined; tokens: Token[] }[] = [{ after: undefined, tokens: [] }];
  for (let index = 0; index < tokens.length; index++) {
    const { text, leads } = tokens[index]!;
    const next = tokens[index + 1];
    if (has(typed.after, text) && next && /^[0-9]{1,3}$/.test(next.text)) {
      parts.push({ after: Number(next.text), tokens: [] });
      index++;
    } else if (has(typed.start, text)) parts.push({ after: 0, tokens: [] });
    else if (leads && /^[0-9]{1,3}$/.test(text)) parts.push({ after: Number(text), tokens: [] });
    else parts.at(-1)!.tokens.push(tokens[index]!);
  }
  return parts.filter((part) => part.tokens.length > 0 || part.after !== undefined);
}

/** Reads the states of a typed answer by the keys of the question. What isn't named is left out. */
export function readStates(
  question: StatesQuestion,
  text: string,
  words: Words,
): Checked<Record<string, string>> {
  const reading = new StatesReading(question, words);
  const tokens = tokensOf(text, words.typed);
  if (tokens.length === 0)
    return {
      ok: false,
      problems: [questionProblem({ says: 'answer-missing', asked: reading.names })],
    };
  const parts = byMoments(question) ? byStep(reading, tokens) : [{ after: undefined, tokens }];
  for (const part of parts) readPart(reading, part.tokens, part.after);
  if (reading.problems.length > 0) return { ok: false, problems: reading.problems };
  reading.completeLists();
  return { ok: true, value: Object.fromEntries(reading.states) };
}
