import type { Migration } from 'kysely';
import { answersAndRecalls } from './001-answers-and-recalls.ts';
import { histories } from './002-histories.ts';
import { people } from './003-people.ts';
import { homework } from './004-homework.ts';
import { triedElsewhere } from './005-tried-elsewhere.ts';
import { proofs } from './006-proofs.ts';
import { ofPeople } from './007-of-people.ts';
import { throttles } from './008-throttles.ts';
import { countsAt } from './009-counts-at.ts';
import { ideasByName } from './010-ideas-by-name.ts';
import { partsCounted } from './011-parts-counted.ts';

/** Every change to the tables, oldest first. One that has been released is never changed again. */
export const migrations: Readonly<Record<string, Migration>> = {
  '001-answers-and-recalls': answersAndRecalls,
  '002-histories': histories,
  '003-people': people,
  '004-homework': homework,
  '005-tried-elsewhere': triedElsewhere,
  '006-proofs': proofs,
  '007-of-people': ofPeople,
  '008-throttles': throttles,
  '009-counts-at': countsAt,
  '010-ideas-by-name': ideasByName,
  '011-parts-counted': partsCounted,
};
