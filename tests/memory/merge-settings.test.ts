import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Settings, settings } from '../../shared/settings.ts';
import { changeSettings, mergeSettings, notAheadOf, sameSettings } from '../../src/memory/index.ts';

const none = settings.parse({});
const old = settings.parse({ changedAt: 100, minutesADay: 10, newSkillsADay: 2 });

describe('settings changed on two devices', () => {
  it('come together field by field, whichever comes first', () => {
    const phone = changeSettings(old, { minutesADay: 25 }, 200);
    const desk = changeSettings(old, { assessmentAt: 9_000 }, 300);
    for (const merged of [mergeSettings(phone, desk), mergeSettings(desk, phone)])
      expect(merged).toMatchObject({
        minutesADay: 25,
        assessmentAt: 9_000,
        newSkillsADay: 2,
        changedAt: 300,
      });
  });

  it('of one field the later change holds', () => {
    const phone = changeSettings(old, { minutesADay: 25 }, 200);
    const desk = changeSettings(old, { minutesADay: null }, 300);
    expect(mergeSettings(desk, phone).minutesADay).toBeNull();
    expect(mergeSettings(phone, desk).minutesADay).toBeNull();
  });

  it('a change is later than what it replaces, also where a clock was put back', () => {
    const first = changeSettings(none, { minutesADay: 25 }, 500);
    const second = changeSettings(first, { minutesADay: 30 }, 400);
    expect(mergeSettings(second, first).minutesADay).toBe(30);
    expect(mergeSettings(first, second).minutesADay).toBe(30);
  });

  it('from before fields had moments hold as a whole against one another, and field by field against others', () => {
    const later = settings.parse({ changedAt: 150, minutesADay: 15 });
    expect(mergeSettings(old, later)).toEqual(later);
    expect(mergeSettings(later, old)).toEqual(later);
    const same = settings.parse({ changedAt: 100, minutesADay: 15 });
    expect(mergeSettings(old, same)).toEqual(same);
    expect(mergeSettings(same, old)).toEqual(old);
    const changed = changeSettings(old, { assessmentAt: 9_000 }, 120);
    expect(mergeSettings(changed, later)).toMatchObject({ minutesADay: 15, assessmentAt: null });
  });

  it('are the same only where each field is, as of the same moment', () => {
    const one = changeSettings(old, { minutesADay: 25 }, 200);
    expect(sameSettings(one, structuredClone(one))).toBe(true);
    for (const other of [
      { ...one, changedAt: 201 },
      { ...one, minutesADay: 26 },
      { ...one, newSkillsADay: 3 },
      { ...one, assessmentAt: 9_000 },
      { ...one, placement: null, changes: { ...one.changes!, placement: 1 } },
      { ...one, changes: { ...one.changes!, minutesADay: 199 } },
    ]) {
      expect(sameSettings(one, other)).toBe(false);
      expect(sameSettings(other, one)).toBe(false);
    }
    // From before fields had moments: each is as old as the whole.
    const all = { assessmentAt: 100, minutesADay: 100, newSkillsADay: 100, placement: 100 };
    expect(sameSettings(old, { ...old, changes: all })).toBe(true);
  });

  it('from before fields had moments that are dated in the future count as made now, and others as they are', () => {
    expect(notAheadOf(old, 50)).toEqual({ ...old, changedAt: 50 });
    expect(notAheadOf(old, 150)).toEqual(old);
    const one = changeSettings(changeSettings(none, { minutesADay: 25 }, 200), { newSkillsADay: 4 }, 900);
    expect(notAheadOf(one, 300)).toEqual({
      ...one,
      changedAt: 300,
      changes: { ...one.changes, newSkillsADay: 300 },
    });
  });

  it('dated in the future count as made now', () => {
    const ahead = notAheadOf(changeSettings(old, { minutesADay: 25 }, 900), 300);
    expect(ahead.changedAt).toBe(300);
    expect(mergeSettings(ahead, changeSettings(old, { minutesADay: 30 }, 400)).minutesADay).toBe(30);
  });

  it('come to the same on every device, in whatever order they meet', () => {
    const some = fc
      .array(
        fc.record({
          at: fc.nat(50),
          wanted: fc.oneof(
            fc.record({ minutesADay: fc.integer({ min: 1, max: 600 }) }),
            fc.record({ newSkillsADay: fc.nat(50) }),
            fc.record({ assessmentAt: fc.option(fc.nat(1000)) }),
          ),
        }),
        { maxLength: 6 },
      )
      .map(
        (changes): Settings =>
          changes.reduce((held, { at, wanted }) => changeSettings(held, wanted, at), none),
      );
    fc.assert(
      fc.property(some, some, some, (one, other, third) => {
        const left = mergeSettings(mergeSettings(one, other), third);
        const right = mergeSettings(one, mergeSettings(other, third));
        expect(sameSettings(left, right)).toBe(true);
        expect(sameSettings(mergeSettings(left, left), left)).toBe(true);
      }),
    );
  });
});
