/** People, their classes, and how they get in. docs/classes.md says it in words. */
import { z } from 'zod';
import { formName } from './form-name.ts';
import { moment } from './memory.ts';

/** What somebody may do, from least to most; `nobody` hasn't signed in. */
export const role = z.enum(['nobody', 'learner', 'tutor', 'admin']);
export const personRole = role.exclude(['nobody']);

/** A name in addresses and records; made where it is stored, and tells nothing. */
const madeId = () =>
  z
    .string()
    .max(64)
    .regex(/^[A-Za-z0-9_-]+$/, formName('form.id'));
export const personId = madeId();
export const classId = madeId();

/**
 * A name as it is kept: composed letters, single spaces, and nothing in it that can't be seen, except what joins or parts
 * letters in scripts that need it (Unicode Standard, 23.2; UAX 31, 2.3).
 */
export const seenName = (name: string): string =>
  name
    .normalize('NFC')
    .replace(
      /(?![\u202A-\u202E\u2066-\u2069])\p{Default_Ignorable_Code_Point}/gu,
      (sign, at: number, all: string) =>
        /[\u200C\u200D]/.test(sign) &&
        /(?=[\p{L}\p{M}])[^\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}]$/u.test(all.slice(0, at)) &&
        /^(?=[\p{L}\p{M}])[^\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}]/u.test(all.slice(at + 1))
          ? sign
          : '',
    )
    .replace(/\p{Zs}+/gu, ' ')
    .trim();

/** Without what would break a line, turn the direction of what follows, or can't be kept. */
const WITHOUT_CONTROLS = /^[^\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202A-\u202E\u2066-\u2069\uFEFF]*$/u;
const line = (most: number) =>
  z.string().overwrite(seenName).min(1).max(most).regex(WITHOUT_CONTROLS, formName('form.line'));

/** Part of a name, to find people by; empty finds everybody. */
export const partOfName = z.string().max(80).regex(WITHOUT_CONTROLS, formName('form.line'));

/** What others call the person. Any name will do; nothing more is asked. */
export const displayName = line(80);
export const classTitle = line(120);
/** Which group of newcomers it is, in a company's own words: `Autumn 2026`. */
export const intake = line(60);

/** What is typed at sign-in beside the password. */
export const signInName = z.string().regex(/^[a-z0-9][a-z0-9._-]{1,39}$/, formName('form.signIn'));

export const password = z.string().min(10, formName('form.password')).max(200);

/** Letters and digits that a joining code is made of: of any that look alike in print, one. */
export const CODE_LETTERS = '0123456789ACDEFGHJKMNPRTVWXY';
/** What is taken for which, when somebody reads a code from paper. */
const LOOK_ALIKES: Readonly<Record<string, string>> = {
  O: '0',
  Q: '0',
  I: '1',
  L: '1',
  Z: '2',
  S: '5',
  B: '8',
  U: 'V',
};

/** A code as it was typed, in whatever case and grouping, as it is kept. */
export const readTyped = (typed: string): string =>
  typed
    .toUpperCase()
    .replace(/[\s-]/g, '')
    .replace(/[OQILZSBU]/g, (letter) => LOOK_ALIKES[letter] ?? letter);

/** Lets whoever knows it join a class. Eight letters; spaces, hyphens and look-alikes are forgiven. */
export const joiningCode = z
  .string()
  .max(40)
  .transform(readTyped)
  .pipe(z.string().regex(new RegExp(`^[${CODE_LETTERS}]{8}$`), formName('form.slipCode')));

/** As it is printed: two groups of four. */
export const shownCode = z.string().regex(new RegExp(`^[${CODE_LETTERS}]{4}-[${CODE_LETTERS}]{4}$`));

/** How somebody belongs to a class. */
export const manner = z.enum(['learner', 'tutor']);

export const person = z.strictObject({
  id: personId,
  name: displayName,
  role: personRole,
  signIn: signInName.nullable(),
  hasPassword: z.boolean(),
  createdAt: moment,
});

export const classSummary = z.strictObject({
  id: classId,
  title: classTitle,
  intake: intake.nullable(),
  createdAt: moment,
  /** When it ended; nobody joins it then, and it is kept as it was. */
  endedAt: moment.nullable(),
  learners: z.number().int().min(0),
});

export const member = z.strictObject({ ...person.shape, manner, joinedAt: moment });

export const classDetail = z.strictObject({
  ...classSummary.shape,
  joiningCode: shownCode,
  joiningOpen: z.boolean(),
  /** By name. */
  members: z.array(member),
});

/** A way in that works once, handed over by a tutor. It can't be asked for again: another one takes its place. */
export const entryLink = z.strictObject({ address: z.url(), until: moment });

/** What is kept about a person beside what was practised. */
export const personExport = z.strictObject({
  name: displayName,
  role: personRole,
  signIn: signInName.nullable(),
  createdAt: moment,
  classes: z.array(z.strictObject({ title: classTitle, manner, joinedAt: moment })),
  sessions: z.array(z.strictObject({ device: z.string(), begunAt: moment, seenAt: moment })),
  linkUntil: moment.nullable(),
});

export type PersonExport = Readonly<z.infer<typeof personExport>>;
export type Role = z.infer<typeof role>;
export type PersonRole = z.infer<typeof personRole>;
export type Manner = z.infer<typeof manner>;
export type Person = Readonly<z.infer<typeof person>>;
export type Member = Readonly<z.infer<typeof member>>;
export type ClassSummary = Readonly<z.infer<typeof classSummary>>;
export type ClassDetail = Readonly<z.infer<typeof classDetail>>;
export type EntryLink = Readonly<z.infer<typeof entryLink>>;
