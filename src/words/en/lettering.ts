/** What stands on a drawing beside its symbols, as short as it is written there. */
import type { StatementOf } from '../statement.ts';
import { time } from './circuit.ts';
import { colours } from './devices.ts';

/** What is needed to tell what a device does. */
const ratings = {
  colour: ({ colour }: { colour: keyof typeof colours }): string => colours[colour],
  amps: ({ amps }: { amps: number }): string => `${amps} A`,
  time: ({ seconds }: { seconds: number }): string => time(seconds),
  onAndOff: ({ on, off }: { on: number; off: number }): string => `${time(on)} / ${time(off)}`,
};
export type RatingSaid = StatementOf<typeof ratings>;

export const lettering = {
  ratings,
  /** Behind the title of what is drawn as it was found. */
  asFound: (title: string): string => (title === '' ? 'As found' : `${title} (as found)`),
  /** Contacts of a relay that nothing is wired to, by their terminals: `free 21-22-24`. */
  free: (contacts: string): string => `free ${contacts}`,
};
