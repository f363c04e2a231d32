import type { Bank } from '../../shared/bank.ts';
import type { Checked } from '../../shared/problem.ts';
import { checkSkills } from '../memory/index.ts';
import type { Course } from './types.ts';

/** Makes a bank ready for practising. Fails as the skill graph does: unknown or circular prerequisites. */
export function courseOf(bank: Bank): Checked<Course> {
  const all = bank.topics.flatMap(({ language, skills }) => skills.map((skill) => ({ ...skill, language })));
  const graph = checkSkills(all.map(({ id, title, needs }) => ({ id, title, needs })));
  if (!graph.ok) return graph;
  return {
    ok: true,
    value: { bank, graph: graph.value, skills: new Map(all.map((skill) => [skill.id, skill])) },
  };
}
