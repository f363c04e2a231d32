import { describe, expect, it } from 'vitest';
import { UsageError } from '../../src/cli/io.ts';
import { type Kind, theOne } from '../../src/cli/named.ts';
import { commands } from '../../src/words/en/commands/index.ts';

const sets = (...titles: string[]) => titles.map((called, at) => ({ id: `id-${at}`, called }));

/** The title found, or what is told instead. */
function found(titles: readonly string[], text: string, kind: Kind = 'set'): string {
  try {
    return theOne(sets(...titles), text, kind, commands).called;
  } catch (error) {
    if (error instanceof UsageError) return `${error.message}\n${error.hint}`;
    throw error;
  }
}

describe('what is named on the command line', () => {
  it('is the one of that id, or else of that title, in large letters or small', () => {
    expect(found(['Week 40', 'Week 4'], 'id-1')).toBe('Week 4');
    expect(found(['Week 40', 'Week 4'], 'week 4')).toBe('Week 4');
    expect(found(['Week 4, again', 'Week 4'], 'WEEK 4 ')).toBe('Week 4');
  });

  it('is not one in whose title a number or a word only begins so', () => {
    expect(found(['Week 40'], 'Week 4')).toBe('There is no set Week 4.\nThere are:\n    id-0  Week 40');
    expect(found(['Week 40'], 'eek 40')).toContain('There is no set');
    expect(found(['Flour line'], 'flo')).toContain('There is no set');
  });

  it('is the only one that has those words', () => {
    expect(found(['Ice works, week 4', 'Ice works, week 40'], 'week 4')).toBe('Ice works, week 4');
    expect(found(['Überstrom: Zähler', 'Flour line'], 'zähler')).toBe('Überstrom: Zähler');
    expect(found(['Flour line'], '  ')).toContain('There is no set');
  });

  it('is the same in composed letters and in letters taken apart', () => {
    const apart = 'Überstrom: Zähler'.normalize('NFD');
    expect(found(['Überstrom: Zähler'], apart, 'person')).toBe('Überstrom: Zähler');
    expect(found(['Überstrom: Zähler'], 'zähler'.normalize('NFD'))).toBe('Überstrom: Zähler');
  });

  it('is nothing where several could be meant, and all of them are told', () => {
    expect(found(['Week 4, north', 'Week 4, south', 'Week 5'], 'week 4')).toBe(
      'There are 2 sets that week 4 could be.\nName the one you mean by the id:\n    id-0  Week 4, north\n    id-1  Week 4, south',
    );
    expect(found(['Week 4', 'week 4'], 'Week 4')).toContain('2 sets that Week 4 could be');
  });

  it('is never found by a part where only the whole will do', () => {
    expect(found(['Ann Orchard'], 'Ann', 'person')).toContain('There is nobody called Ann.');
  });
});
