/** The tables of people and classes, as Kysely sees them. */
import type { Manner, PersonRole } from '../../../shared/people.ts';

export interface PersonTable {
  /** Also the `learner` of what the person has practised. */
  id: string;
  name: string;
  role: PersonRole;
  sign_in: string | null;
  /** Argon2id, with its salt and its measure in it. */
  password_hash: string | null;
  created_at: number;
}

export interface ClassTable {
  id: string;
  title: string;
  intake: string | null;
  joining_code: string;
  /** 1: whoever knows the code may join. */
  joining_open: number;
  created_at: number;
  ended_at: number | null;
}

export interface MembershipTable {
  class: string;
  person: string;
  manner: Manner;
  joined_at: number;
}

export interface SessionTable {
  /** What only the browser has is never kept: its SHA-256 is. */
  token_hash: string;
  /** By which the session can be named without being used. */
  id: string;
  person: string;
  begun_at: number;
  seen_at: number;
  until: number;
  device: string;
}

/** At most one link for each person. A link that was used is gone. */
export interface LinkTable {
  token_hash: string;
  person: string;
  until: number;
}

export interface TriesTable {
  /** A keyed hash of what was tried and by whom, so that neither names nor addresses stand here. */
  key: string;
  window_start: number;
  count: number;
}

export interface ThrottlesTable {
  /** A keyed hash, as with `tries`. */
  key: string;
  /** Wrong tries since the last right one. */
  wrong: number;
  /** No try is taken before this moment. */
  wait_until: number;
  seen_at: number;
}

export interface InstallationTable {
  name: string;
  value: string;
}

export interface PeopleTables {
  people: PersonTable;
  classes: ClassTable;
  memberships: MembershipTable;
  sessions: SessionTable;
  links: LinkTable;
  tries: TriesTable;
  throttles: ThrottlesTable;
  installation: InstallationTable;
}
