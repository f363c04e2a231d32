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

describe('the paths of a drawing', () => {
  const circuits = everyDraft.flatMap(([, drafts]) => drafts.map(({ circuit }) => circuit));

  it('of one supply stand together on a sheet, the control supply first', () => {
    let several = 0;
    for (const { paths, sheets, supplies, title } of circuits) {
      const direct = supplies.filter(({ current }) => current !== '3AC').map(({ name }) => name);
      for (const { number } of sheets) {
        const returns = paths
          .filter(({ sheet }) => sheet === number)
          .flatMap(({ steps }) => steps.at(-1)!.device)
          .filter((name) => direct.includes(name));
        const runs = returns.filter((name, index) => name !== returns[index - 1]);
        // A sheet with relays and lamps on it has each supply once in each of the two.
        expect(runs.length, `${title}: ${returns.join('')}`).toBeLessThanOrEqual(2 * new Set(returns).size);
        if (sheets.length === 1) expect(runs, `${title}: ${returns.join('')}`).toEqual([...runs].sort());
        if (new Set(returns).size > 1) several++;
      }
    }
    expect(several).toBeGreaterThan(20);
  });

  it('have rows of sixteen terminals at most between panel and field', () => {
    const rows = circuits.flatMap(({ devices }) =>
      devices.flatMap((device) => (device.kind === 'terminals' ? [device.count] : [])),
    );
    expect(rows.length).toBeGreaterThan(50);
    // A few more than are used are left free.
    expect(Math.max(...rows)).toBeLessThanOrEqual(20);
  });
});
