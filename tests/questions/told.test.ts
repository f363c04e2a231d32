/** What was kept is told, whatever it holds: of a later version, or made up by whoever sent it. */
import { describe, expect, it } from 'vitest';
import { answerData } from '../../shared/question.ts';
import { tellAnswer, tellIdea } from '../../src/questions/index.ts';
import { english } from '../../src/words/en/core.ts';

describe('what these words don’t know', () => {
  it.each(['constructor', 'toString', '__proto__', 'of-a-later-version'])(
    'is told by its name: %s',
    (name) => {
      expect(tellAnswer(english, answerData.parse({ says: name }))).toBe(name);
      expect(tellIdea(english, name)).toEqual({ id: name, idea: name, advice: '' });
    },
  );

  it('may be a reading without its volts, or with something else in their place', () => {
    expect(tellAnswer(english, answerData.parse({ says: 'volts' }))).toBe('volts');
    expect(tellAnswer(english, answerData.parse({ says: 'volts', volts: '24' }))).toBe('volts');
    expect(tellAnswer(english, answerData.parse({ says: 'volts', volts: 24 }))).toBe('24 V');
  });

  it('may lack its values, whatever it is', () => {
    for (const says of Object.keys(english.answers)) {
      const told = tellAnswer(english, answerData.parse({ says }));
      expect(told, says).not.toMatch(/undefined .|. undefined/);
      expect(told.length, says).toBeGreaterThan(0);
    }
  });
});
