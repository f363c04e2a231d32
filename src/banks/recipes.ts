import { nearest } from '../circuit/index.ts';
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
        report.add({ says: 'bank-recipe-size', smallest, largest }, places.positionOf([...path, 'size']));
      recipe.families.forEach((id, place) => {
        const family = familyOf(id);
        const ids = families.map((each) => each.id);
        if (!family)
          report.add(
            { says: 'bank-unknown-family', family: id, meant: nearest(id, ids), families: ids },
            places.positionOf([...path, 'families', place]),
          );
        else if (smallest < family.size.min || largest > family.size.max)
          report.add(
            { says: 'bank-recipe-size.family', family: id, least: family.size.min, most: family.size.max },
            places.positionOf([...path, 'size']),
          );
      });
    });
  });
}
