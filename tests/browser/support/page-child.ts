/** A server as a program of its own, for a built page in any folder: page-child.ts FOLDER DATA PORT. */

import { createServer } from '../../../src/server/index.ts';
import { openStore, storeFile } from '../../../src/store/index.ts';
import { english } from '../../../src/words/en/core.ts';
import { ownBank } from '../../support/own-bank.ts';

const [folder = '', data = '', port = '0'] = process.argv.slice(2);
const store = await openStore({ kind: 'file', file: storeFile(data) });
const app = await createServer({
  store,
  bank: ownBank(),
  words: english,
  folder,
  version: '0.0.0-test',
});
console.log(`ready: ${await app.listen({ host: '127.0.0.1', port: Number(port) })}`);
