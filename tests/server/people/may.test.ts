/** Who may look after whom, and who may look into which class: what is refused looks as if it weren't there. */
import { describe, expect, it } from 'vitest';
import type { PersonRole } from '../../../shared/people.ts';
import type { Asking } from '../../../src/server/people/gate.ts';
import { checkTeaches, inCareOf, mayCareFor } from '../../../src/server/people/may.ts';
import type { Store } from '../../../src/store/index.ts';
import { outcome } from './asked.ts';
import { inStore } from './in-store.ts';

const asking = (id: string, role: PersonRole): Asking => ({ id, role, session: null });

/** A class with a tutor, and a learner and a tutor who learn in it; and a class of somebody else. */
async function peopleIn({ people: { persons, classes, joining } }: Store) {
  const make = async (name: string, role: PersonRole): Promise<string> =>
    (await persons.make({ name, role, signIn: name.toLowerCase() }))!.id;
  const [tom, tilda, theo] = await Promise.all(['Tom', 'Tilda', 'Theo'].map((name) => make(name, 'tutor')));
  const [lea, lars, odd] = await Promise.all(['Lea', 'Lars', 'Odd'].map((name) => make(name, 'learner')));
  const ada = await make('Ada', 'admin');
  const own = await classes.make('Flour line', null, tom!);
  const other = await classes.make('Ice works', null, tilda!);
  await joining.asKnown(own.joiningCode.replace('-', ''), lea!);
  await joining.asKnown(own.joiningCode.replace('-', ''), theo!);
  await joining.asKnown(other.joiningCode.replace('-', ''), lars!);
  return { tom: tom!, tilda: tilda!, theo: theo!, lea: lea!, lars: lars!, odd: odd!, ada, own, other };
}

describe('somebody', () => {
  it.each([
    ['admin', 'admin', true],
    ['admin', 'tutor', true],
    ['admin', 'learner', true],
    ['tutor', 'learner', true],
    ['tutor', 'tutor', false],
    ['tutor', 'admin', false],
    ['learner', 'learner', false],
    ['learner', 'tutor', false],
  ] as const)('who is %s may look after one who is %s: %s', (role, of, may) => {
    expect(mayCareFor(asking('a', role), { role: of })).toBe(may);
  });

  it('is looked after by the tutor of a class they learn in, and by an administrator', () =>
    inStore(async (store) => {
      const { tom, lea, ada } = await peopleIn(store);
      expect(await inCareOf(store, asking(tom, 'tutor'), lea)).toMatchObject({ id: lea, name: 'Lea' });
      expect(await inCareOf(store, asking(ada, 'admin'), lea)).toMatchObject({ id: lea });
    }));

  it('is not there for a tutor of another class, for one who is a tutor too, nor for a learner', () =>
    inStore(async (store) => {
      const { tom, lea, lars, theo, odd } = await peopleIn(store);
      const looked = (role: PersonRole, by: string, id: string) =>
        outcome(() => inCareOf(store, asking(by, role), id));
      expect(await looked('tutor', tom, lars)).toBe('no-such-thing');
      expect(await looked('tutor', tom, odd)).toBe('no-such-thing');
      expect(await looked('tutor', tom, theo)).toBe('no-such-thing');
      expect(await looked('learner', lea, lea)).toBe('no-such-thing');
      expect(await looked('admin', 'ada', 'nobody')).toBe('no-such-thing');
    }));
});

describe('a class', () => {
  it('is there for its tutor and for an administrator, and for nobody else', () =>
    inStore(async (store) => {
      const { tom, tilda, theo, lea, ada, own } = await peopleIn(store);
      const looked = (id: string, role: PersonRole) =>
        outcome(() => checkTeaches(store, asking(id, role), own.id));
      expect(await looked(tom, 'tutor')).toBe('let in');
      expect(await looked(ada, 'admin')).toBe('let in');
      expect(await looked(tilda, 'tutor')).toBe('no-such-thing');
      expect(await looked(theo, 'tutor')).toBe('no-such-thing');
      expect(await looked(lea, 'learner')).toBe('no-such-thing');
      // One who was tutor of it and is a learner now has no rights left from before.
      expect(await looked(tom, 'learner')).toBe('no-such-thing');
    }));
});
