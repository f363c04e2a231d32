/** Runs once when the program has been built, with its folder: reads the banks that come with it, and keeps them so. */
import { bankFiles, courseFrom, ownBanks, readBanks } from './course.ts';
import { keepBank } from './kept-bank.ts';
import { ownWords } from './own-words.ts';
import { terminalIo } from './terminal-io.ts';

const [, , folder = '.'] = process.argv;
const io = terminalIo(await ownWords(process.env));
const banks = ownBanks(io);
const files = await readBanks(io, bankFiles(banks, io));
keepBank(files, (await courseFrom(io, files, banks)).bank, folder);
io.close();
