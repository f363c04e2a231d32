import { didYouMean, shown } from '../circuit/wording.ts';
import { families, familyOf } from '../generator/index.ts';
import type { ReadFront } from './front/front-matter.ts';
import type { BankReport } from './report.ts';

/** Reports families that there aren't and sizes that a family hasn't got. */
export function checkRecipes({ matter, places }: ReadFront, report: BankReport): void {
  matter.skills.forEach(({ recipes }, skill) => {
    recipes.forEach((recipe, index) => {
      const path = ['skills', skill, 'recipes', index];
      const [smallest, largest] = recipe.size;
      if (smallest > largest)
        report.add(
          'bank-recipe-size',
          places.spotOf([...path, 'size']),
          'The smallest size is larger than the largest.',
          `Write the smaller first: [${largest}, ${smallest}].`,
        );
      recipe.families.forEach((id, place) => {
        const family = familyOf(id);
        const ids = families.map((each) => each.id);
        if (!family)
          report.add(
            'bank-unknown-family',
            places.spotOf([...path, 'families', place]),
            `There is no family ${shown(id)}.`,
            `${didYouMean(id, ids)}There are: ${ids.join(', ')}.`,
          );
        else if (smallest < family.size.min || largest > family.size.max)
          report.add(
            'bank-recipe-size',
            places.spotOf([...path, 'size']),
            `The family ${id} has the sizes ${family.size.min} to ${family.size.max}.`,
            'Ask for sizes among them, or give this family a recipe of its own.',
          );
      });
    });
  });
}
