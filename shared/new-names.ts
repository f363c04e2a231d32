/**
 * Names as they come in, of people, classes and sets. What is kept already is read with the schemas of shared/people.ts: a name from
 * before this rule is still shown and given out.
 */
import type { z } from 'zod';
import { formName } from './form-name.ts';
import { classTitle, displayName, intake, seenName } from './people.ts';

/**
 * What a spreadsheet runs as a formula begins so (OWASP, CSV Injection; in full width too). Tables for people have an apostrophe before it;
 * those for programs (OneRoster) have texts as they are.
 */
const FORMULA = /^['"]*[=+\-@＝＋－＠]/;

/** A word that is nothing but a hyphen, between others: `Jean - Pierre`. */
const HYPHEN = / -(?= )/g;

/**
 * Whether a name, or a word of it where `inWords` is set, begins as a formula does. What stands behind a semicolon may begin a cell
 * too: spreadsheets of some countries divide lines there.
 */
export const beginsFormula = (name: string, inWords = false): boolean => {
  const seen = seenName(name);
  const texts = inWords ? seen.replace(HYPHEN, '').split(/[\s;]/) : seen.split(';');
  return texts.some((text) => FORMULA.test(text));
};

const asNew = (schema: z.ZodString, inWords = false): z.ZodString =>
  schema.refine((name) => !beginsFormula(name, inWords), formName('form.noFormula'));

/** Of somebody: no word of it either, because tables for programs have the family name, which is the last word, apart. */
export const newName = asNew(displayName, true);
export const newClassTitle = asNew(classTitle);
export const newIntake = asNew(intake);
/** Of a homework set. */
export const newSetTitle = asNew(classTitle);
