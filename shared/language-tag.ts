import { z } from 'zod';
import { formName } from './form-name.ts';

/**
 * Whether Intl takes it as the tag of a language. It takes names of five to eight letters as well (`english`), which BCP 47 keeps
 * for languages that are registered so: none is.
 */
function isTag(text: string): boolean {
  try {
    return /^[a-z]{2,3}(-|$)/i.test(text) && Intl.getCanonicalLocales(text).length === 1;
  } catch {
    return false;
  }
}

/** A language as BCP 47 names it, in the usual letters: `en`, `de-AT`, `zh-Hant`. */
export const languageTag = z
  .string()
  .max(35)
  .refine(isTag, { error: formName('form.language'), abort: true })
  .overwrite((tag) => Intl.getCanonicalLocales(tag)[0]!);
