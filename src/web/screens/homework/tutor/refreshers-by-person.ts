import type { CompetenceView } from '../../../../../shared/homework-views.ts';

type Due = CompetenceView['refreshers'][number];

/** What is due of one person, the first due first. */
export interface PersonsRefreshers {
  readonly person: string;
  readonly due: readonly Due[];
  readonly overdue: number;
}

/** Refreshers by person: whose first one is due first comes first. */
export function byPerson(refreshers: readonly Due[], now: number): readonly PersonsRefreshers[] {
  const people = new Map<string, Due[]>();
  for (const each of refreshers.toSorted((one, other) => one.dueAt - other.dueAt))
    people.set(each.person, [...(people.get(each.person) ?? []), each]);
  return [...people].map(([person, due]) => ({
    person,
    due,
    overdue: due.filter(({ dueAt }) => dueAt <= now).length,
  }));
}
