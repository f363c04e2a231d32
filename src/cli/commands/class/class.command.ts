import type { Command } from 'commander';
import { commandIn } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { Running } from '../../running.ts';
import { addClasses } from './classes.command.ts';
import { addHanding } from './handing.command.ts';
import { addPeople } from './people.command.ts';

/** `polewise class`: everything about classes and who is in them, on the store itself. */
export function addClass(program: Command, io: Io, running: Running): void {
  const { help } = io.words.class;
  const group = commandIn(program, 'class', help);
  addClasses(group, io);
  addPeople(group, io);
  addHanding(group, io, running);
}
