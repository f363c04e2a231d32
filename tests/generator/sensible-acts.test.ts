/** What somebody of the trade would shake the head at. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { families, free, randomOf } from '../../src/generator/index.ts';
import type { Draft } from '../../src/generator/types.ts';
import { drawn } from '../support/drawn.ts';

const SEEDS = drawn(100);

const everyDraft = [...families, free].map(
  ({ id, size, draft }) =>
    [
      id,
      Array.from({ length: SEEDS }, (_, seed) =>
        draft(randomOf(`sensible ${seed}`), { size: 1 + (seed % size.max) }),
      ),
    ] as const,
);

/** The act of a device that is done when it stands so already. */
function doneTwice({ scenario, others }: Draft): string[] {
  return [scenario, ...others].flatMap(({ acts }) => {
    const last = new Map<string, string>();
    return acts.flatMap((act) => {
      if (!('device' in act)) return [];
      const done = JSON.stringify(act);
      const again = last.get(act.device) === done;
      last.set(act.device, done);
      return again ? [done] : [];
    });
  });
}

describe('what is done in a question', () => {
  it.each(everyDraft)('of %s is never what was done just before', (_, drafts) => {
    expect(drafts.flatMap(doneTwice)).toEqual([]);
  });
});

describe('a network of relays', () => {
  it('has no device twice on one path: make and break of one never close together', () => {
    const [, drafts] = everyDraft.find(([id]) => id === free.id)!;
    for (const { circuit } of drafts)
      for (const { steps } of circuit.paths) {
        // A relay that feeds back on itself has its contact before its own coil.
        const contacts = steps.filter(({ enter, leave }) => leave !== undefined && enter !== 'A1');
        const through = contacts.map(({ device }) => device);
        expect(new Set(through).size, `${circuit.title}: ${through.join(' ')}`).toBe(through.length);
      }
  });
});
