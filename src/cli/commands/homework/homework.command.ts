import type { Command } from 'commander';
import { commandIn } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { Running } from '../../running.ts';
import { addClosing } from './closing.command.ts';
import { addExport } from './export.command.ts';
import { addIssue } from './issue.command.ts';
import { addList } from './list.command.ts';
import { addMarks } from './mark.command.ts';
import { addNew } from './new.command.ts';
import { addPapers } from './papers.command.ts';
import { addReport } from './report.command.ts';
import { addSample } from './sample.command.ts';

/** `homework`: everything a tutor does with sets, on the store directly. */
export function addHomework(program: Command, io: Io, running: Running): void {
  const { help } = io.words.homework;
  const homework = commandIn(program, 'homework', help);
  addNew(homework, io, running);
  addSample(homework, io);
  addIssue(homework, io, running);
  addClosing(homework, io);
  addPapers(homework, io, running);
  addMarks(homework, io, running);
  addReport(homework, io);
  addExport(homework, io);
  addList(homework, io);
}
