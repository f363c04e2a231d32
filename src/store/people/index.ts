/** People and classes, how they get in and what keeps others out. */
import type { Kysely } from 'kysely';
import type { Tables } from '../schema.ts';
import { type Classes, classesOn } from './classes.ts';
import { type Installation, installationOn } from './installation.ts';
import { type Joining, joiningOn } from './joining.ts';
import { type Links, linksOn } from './links.ts';
import { type Persons, personsOn } from './persons.ts';
import { type Sessions, sessionsOn } from './sessions.ts';
import { type Throttles, throttlesOn } from './throttles.ts';
import { type Tries, triesOn } from './tries.ts';

export type { ClassChange } from './classes.ts';
export type { AddedPerson, JoinRefusal } from './joining.ts';
export { LINK_LASTS, type MadeLink } from './links.ts';
export type { NewPerson } from './person-row.ts';
export { SESSION_LASTS, type SessionHolder, type SessionView } from './sessions.ts';
export type { TakenRoster, WantedMember } from './take-roster.ts';
export type { TryLimit } from './tries.ts';

/** Everything is a row: any number of servers on one store see the same. */
export interface People {
  readonly installation: Installation;
  readonly persons: Persons;
  readonly classes: Classes;
  readonly joining: Joining;
  readonly sessions: Sessions;
  readonly links: Links;
  readonly tries: Tries;
  readonly throttles: Throttles;
}

export function peopleOn(db: Kysely<Tables>, now: () => number): People {
  const installation = installationOn(db);
  return {
    installation,
    persons: personsOn(db, now),
    classes: classesOn(db, now),
    joining: joiningOn(db, now),
    sessions: sessionsOn(db, now),
    links: linksOn(db, now),
    tries: triesOn(db, installation, now),
    throttles: throttlesOn(db, installation, now),
  };
}
