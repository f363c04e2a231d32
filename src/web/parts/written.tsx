/** In which language what stands in the bank is written: for `lang` on the elements around it, where it is another one than the page's. */
import type { Bank, Topic } from '../../../shared/bank.ts';
import { language } from '../words.ts';

/** For the element around words of a bank. */
export interface Written {
  readonly lang?: string;
}

/** Of the bank that is open: the language of each skill's topic. */
const languages = new Map<string, string>();

export function openLanguages({ topics }: Bank): void {
  languages.clear();
  for (const { language, skills } of topics) for (const { id } of skills) languages.set(id, language);
}

const of = (tag: string | undefined): Written => (tag === undefined || tag === language ? {} : { lang: tag });

export const written = ({ language }: Pick<Topic, 'language'>): Written => of(language);

/** Of what stands in the topic of a skill: its title, its questions. */
export const skillWritten = (skill: string): Written => of(languages.get(skill));

export function SkillTitle({ skill, title }: { skill: string; title: string }) {
  const { lang } = skillWritten(skill);
  return lang === undefined ? title : <span lang={lang}>{title}</span>;
}
