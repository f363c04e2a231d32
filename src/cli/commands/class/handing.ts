/** What is handed out and taken over: slips and rosters. */

import { join } from 'node:path';
import type { RosterIn } from '../../../../shared/api-people.ts';
import { zipFiles } from '../../../homework/index.ts';
import { oneRosterFiles, rosterCsv, wantedIn } from '../../../server/index.ts';
import { say } from '../../../words/statement.ts';
import { coreWordsOf } from '../../core-words.ts';
import { readGiven } from '../../files.ts';
import { type Io, UsageError } from '../../io.ts';
import { wholeNumber } from '../../numbers.ts';
import { reportProblems } from '../../problems.ts';
import { withStore } from '../../store-place.ts';
import { writeFile } from '../../write-file.ts';
import { classNamed } from './find.ts';
import { linkText } from './link-text.ts';
import type { AddressOption, DataOption } from './options.ts';

export interface SlipOptions extends DataOption, AddressOption {
  readonly out: string;
  readonly links?: boolean;
  readonly count?: string;
}
export interface RosterOptions extends DataOption {
  readonly in?: string;
  readonly out?: string;
  readonly look?: boolean;
  readonly source?: string;
}

const WANTED_FILES = ['users.csv', 'classes.csv', 'enrollments.csv'] as const;

const write = (io: Io, file: string, content: string | Uint8Array): void =>
  writeFile(io, file, content, io.words.files.mayNotBeWritten.rightHere);

/** A table, by its ending; otherwise a folder with the files of an export. */
async function rosterFrom(io: Io, path: string, source: string | undefined): Promise<RosterIn> {
  const { wanted } = io.words.class.roster;
  if (path === '-' || /\.csv$/i.test(path)) return { format: 'csv', text: await readGiven(io, path, wanted) };
  const files: Record<string, string> = {};
  for (const file of WANTED_FILES) files[file] = await readGiven(io, join(path, file), wanted);
  return { format: 'oneroster', files, ...(source === undefined ? {} : { class: source }) };
}

async function takeRoster(name: string, options: RosterOptions & { in: string }, io: Io): Promise<0 | 2> {
  const { full, roster: said } = io.words.class;
  const wanted = wantedIn(await rosterFrom(io, options.in, options.source));
  if (!wanted.ok) return reportProblems(wanted.problems, options.in, io);
  await withStore(io, options.data, async (store) => {
    const { id } = await classNamed(store, name, io.words);
    const rosterOptions = { asAdmin: true, look: options.look ?? false };
    const taken = await store.people.joining.byRoster(id, wanted.value, rosterOptions);
    if (taken === null || taken === 'class-full') throw new UsageError(full.wrong, full.right);
    for (const { name: called, manner, result } of taken.lines)
      io.out(said.line({ name: called, manner: said.manners[manner], result: said.results[result] }));
    for (const why of taken.passedOver) io.out(said.passedOver(say(io.words.kept.passedOver, why)));
    if (options.look) io.out(said.nothingChanged);
  });
  return 0;
}

async function giveRoster(name: string, file: string, data: string | undefined, io: Io): Promise<void> {
  await withStore(io, data, async (store) => {
    const { roster: said } = io.words.class;
    const detail = await classNamed(store, name, io.words);
    if (/\.csv$/i.test(file)) write(io, file, rosterCsv(detail));
    else if (/\.zip$/i.test(file)) write(io, file, zipFiles(oneRosterFiles(detail, await coreWordsOf(io))));
    else throw new UsageError(said.neitherCsvNorZip.wrong(file), said.neitherCsvNorZip.right);
    io.out(said.given({ count: detail.members.length, file }));
  });
}

/** Writes slips to cut apart and hand out. */
export async function writeSlips(name: string, options: SlipOptions, io: Io): Promise<void> {
  const { slips: said } = io.words.class;
  const { noPdf } = io.words.files;
  if (!/\.pdf$/i.test(options.out)) throw new UsageError(noPdf.wrong(options.out), noPdf.right('slips.pdf'));
  await withStore(io, options.data, async (store) => {
    const detail = await classNamed(store, name, io.words);
    const made: { name: string | null; link: string | null }[] = [];
    if (options.links)
      for (const one of detail.members.filter(
        ({ manner, hasPassword }) => manner === 'learner' && !hasPassword,
      ))
        made.push({
          name: one.name,
          link: linkText(options, await store.people.links.make(one.id), io.words),
        });
    else {
      const count = options.count
        ? wholeNumber(io, '--count', options.count, { low: 1, high: 400, example: 12 })
        : detail.learners || 12;
      for (let at = 0; at < count; at++) made.push({ name: null, link: null });
    }
    if (made.length === 0)
      throw new UsageError(said.everybodyHasAPassword.wrong, said.everybodyHasAPassword.right);
    const { joiningSlipsPdf } = await import('../../../homework/print/index.ts');
    const pdf = await joiningSlipsPdf({
      words: await coreWordsOf(io),
      className: detail.title,
      code: detail.joiningCode,
      address: options.address,
      slips: made,
      made: new Date(io.now()),
    });
    write(io, options.out, pdf);
    io.out(said.written({ count: made.length, file: options.out }));
  });
}

/** Takes people over into a class, or gives them out; gives the exit code. */
export async function handRoster(name: string, options: RosterOptions, io: Io): Promise<0 | 2> {
  const { eitherInOrOut } = io.words.class.roster;
  const { in: from, out } = options;
  if ((from === undefined) === (out === undefined))
    throw new UsageError(eitherInOrOut.wrong, eitherInOrOut.right);
  if (from !== undefined) return takeRoster(name, { ...options, in: from }, io);
  await giveRoster(name, out!, options.data, io);
  return 0;
}
