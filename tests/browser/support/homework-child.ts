/**
 * A server that people sign in to, as a program of its own: homework-child.ts FOLDER DATA PORT NAMES. A line `ahead N` on its input
 * sets its clock N milliseconds ahead. It prints one line of JSON when it is ready.
 */

import { createInterface } from 'node:readline';
import { createServer } from '../../../src/server/index.ts';
import { openStore, storeFile } from '../../../src/store/index.ts';
import { english } from '../../../src/words/en/core.ts';
import { ownBank } from '../../support/own-bank.ts';

const [folder = '', data = '', port = '0', names = ''] = process.argv.slice(2);
let ahead = 0;
const now = (): number => Date.now() + ahead;
const store = await openStore({ kind: 'file', file: storeFile(data) }, { now });
const app = await createServer({
  store,
  bank: ownBank(),
  words: english,
  folder,
  version: '0.0.0-test',
  class: {},
  now,
});
const { persons, classes, joining, sessions } = store.people;

async function somebody(name: string, role: 'learner' | 'tutor') {
  const made = await persons.make({ name, role });
  if (!made) throw new Error(`${name} could not be made`);
  return { id: made.id, name, token: await sessions.begin(made.id, 'a test') };
}

async function seed() {
  const tutor = await somebody('T. Fennel', 'tutor');
  const { id, joiningCode } = await classes.make('Flour line, autumn', null, tutor.id);
  const learners = [];
  for (const name of names.split('|').filter(Boolean)) {
    const learner = await somebody(name, 'learner');
    await joining.asKnown(joiningCode.replace('-', ''), learner.id);
    learners.push(learner);
  }
  return { classId: id, tutor, learners };
}

// Started again, everybody is there already.
const seeded = names === '' ? {} : await seed();
createInterface({ input: process.stdin }).on('line', (line) => {
  const [word, value] = line.split(' ');
  if (word !== 'ahead') return;
  ahead = Number(value);
  console.log('set');
});
const address = await app.listen({ host: '127.0.0.1', port: Number(port) });
console.log(JSON.stringify({ address, ...seeded }));
