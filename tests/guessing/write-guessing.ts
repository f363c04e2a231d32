/** Writes the tables of docs/guessing.md: `npm run docs:guessing`. Takes some minutes. */
import { readFileSync, writeFileSync } from 'node:fs';
import { ownBank } from '../support/own-bank.ts';
import { guessingTables } from './guessing-tables.ts';
import { measure } from './measure.ts';
import { sampled } from './sample.ts';
import { caseOf } from './seen.ts';

const COUNT = 2_000;
const FILE = new URL('../../docs/guessing.md', import.meta.url);
const BEGIN = '<!-- tables: written by tests/guessing/write-guessing.ts -->';
const END = '<!-- end of tables -->';

const casesOf = (name: string) => sampled(ownBank(), COUNT, name).map(caseOf);
const learning = casesOf('to learn from');
const asked = casesOf('to answer');
const text = readFileSync(FILE, 'utf8');
const [before, rest] = text.split(BEGIN);
const after = rest?.split(END)[1];
if (before === undefined || after === undefined)
  throw new Error('docs/guessing.md has no place for the tables');
writeFileSync(FILE, `${before}${BEGIN}\n${guessingTables(measure(learning, asked), asked)}\n${END}${after}`);
