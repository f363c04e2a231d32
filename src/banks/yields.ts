import type { Recipe } from '../../shared/bank.ts';
import type { QuestionKind } from '../../shared/question.ts';
import { generate, randomOf } from '../generator/index.ts';
import { askCourse, mayAsk, proposeQuestion } from '../questions/index.ts';
import type { PlacedTopic } from './read-topic.ts';
import type { BankReport } from './report.ts';

/** Circuits tried for one family and kind before it is said to give nothing. */
const TRIES = 24;

/** Whether a family gives a question of a kind, in one of these sizes. */
function gives(family: string, kind: QuestionKind, { size: [smallest, largest], happens }: Recipe): boolean {
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const seed = `yields/${family}/${kind}/${attempt}`;
    const size = smallest + (attempt % (largest - smallest + 1));
    const made = generate({
      seed,
      family,
      size,
      course: askCourse([kind]),
      mayAsk: mayAsk([kind], happens),
    });
    if (made.ok && proposeQuestion(made.accepted.draft, [kind], randomOf(seed))) return true;
  }
  return false;
}

/** Reports recipes with a family that gives no question of one of their kinds. Families and sizes are known to be there. */
export function checkYields({ topic, places }: PlacedTopic, report: BankReport): void {
  topic.skills.forEach(({ recipes }, skill) => {
    recipes.forEach((made, recipe) => {
      const { families, kinds, size } = made;
      families.forEach((family, index) => {
        for (const kind of kinds)
          if (!gives(family, kind, made))
            report.add(
              { says: 'bank-recipe-empty', family, kind, smallest: size[0], largest: size[1] },
              places.positionOf(['skills', skill, 'recipes', recipe, 'families', index]),
            );
      });
    });
  });
}
