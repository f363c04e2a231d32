import { words } from '../../../words.ts';

/** Names of people by their ids, as reports send them. */
export const namesOf = (people: readonly { readonly id: string; readonly name: string }[]) => {
  const names = new Map(people.map(({ id, name }) => [id, name]));
  return (id: string): string => names.get(id) ?? words('sets').common.hasLeft;
};
