/** Names in one class that can be taken for one another. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { peopleRoutes } from '../../shared/api-people.ts';
import { displayName } from '../../shared/people.ts';
import { Browser, type ClassServing, classServing, PASSWORD } from '../server/class-serving.ts';

let server: ClassServing;
beforeEach(async () => {
  server = await classServing();
});
afterEach(() => server.end());

let number = 0;
const joining = (name: string) => ({
  body: { code: server.ownClass.joiningCode, name, signIn: `new.${number++}`, password: PASSWORD },
});

describe('a name that somebody chooses', () => {
  // Pairs of Unicode's confusables.txt (UTS 39), and signs that can't be seen (Default_Ignorable_Code_Point).
  const attacks = {
    'in letters of another alphabet': 'L\u0435a L\u0435\u0430rner',
    'with a digit for a letter': 'Lea L\u0435arner',
    'in full-width letters': '\uFF2Cea Learner',
    'with a space of no width': 'Lea\u200B Learner',
    'with what joins letters': 'Le\u200Da Learner',
    'with a soft hyphen': 'Lea Lear\u00ADner',
    'with two spaces': 'Lea  Learner',
    'in small letters': 'lea learner',
    'the same': 'Lea Learner',
  };
  for (const [what, name] of Object.entries(attacks))
    it(`${what}, that looks like a classmate’s, is refused`, async () => {
      expect(await new Browser(server).refusedBy(peopleRoutes.join, joining(name))).toBe('name-alike');
    });

  it('is taken in whatever script where nobody is called so', async () => {
    for (const name of ['Lea Lerner', 'Ли Ольха', '蕨 類', 'Léa Learner'])
      await new Browser(server).call(peopleRoutes.join, joining(name));
  });

  it('is taken in another class', async () => {
    const body = { ...joining('Lea Learner').body, code: server.otherClass.joiningCode };
    await new Browser(server).call(peopleRoutes.join, { body });
  });
});

describe('names that tutors give', () => {
  const params = () => ({ class: server.ownClass.id });

  it('may be the same twice, and not two that only look the same', async () => {
    const { browser } = server.tutor;
    await browser.call(peopleRoutes.addLearners, {
      params: params(),
      body: { names: ['Anna Ash', 'Anna Ash'] },
    });
    const body = { names: ['Anna \u0410sh'] };
    expect(await browser.refusedBy(peopleRoutes.addLearners, { params: params(), body })).toBe('name-alike');
    const taken = await browser.call(peopleRoutes.takeRoster, {
      params: params(),
      body: { format: 'csv', text: 'name\nAnna \u0410sh\nBea Birch\n' },
    });
    expect(taken).toMatchObject({
      lines: [{ name: 'Bea Birch' }],
      passedOver: [expect.stringContaining('looks like Anna Ash')],
    });
  });
});

describe('a name as it is kept', () => {
  it('has nothing in it that can’t be seen, but what joins letters where a script needs it', () => {
    expect(displayName.parse(' Fern\u200B\u2060 \u00A0Ash\uFE0F ')).toBe('Fern Ash');
    // Persian with a zero-width non-joiner (Unicode Standard, 23.2).
    expect(displayName.parse('می\u200Cخواهم')).toBe('می\u200Cخواهم');
    expect(displayName.safeParse('\u200B\u2060').success).toBe(false);
    expect(displayName.parse('Jose\u0301')).toBe('José');
  });
});
