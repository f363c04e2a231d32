/** Power paths of generated circuits, read off the drawing. */
import { describe, expect, it } from 'vitest';
import { PROFILES } from '../../src/drawing/index.ts';
import { families, randomOf } from '../../src/generator/index.ts';
import { layOut } from '../support/in-english.ts';
import { WIDTHS } from './geometry-check.ts';

const withMotors = families.filter(({ id }) => id === 'star-delta');

describe('the three poles that a dashed line joins in a power path', () => {
  it('stand at one pitch, at every width', () => {
    let groups = 0;
    for (const family of withMotors)
      for (let seed = 0; seed < 20; seed++) {
        const { min, max } = family.size;
        const size = min + (seed % (max - min + 1));
        const { circuit } = family.draft(randomOf(`power ${seed}`), { size });
        for (const width of WIDTHS)
          for (const { links } of layOut(circuit, PROFILES[width]).sheets)
            for (const first of links)
              for (const second of links) {
                if (first.to !== second.from) continue;
                groups += 1;
                expect(second.x2 - second.x1, `${seed} ${width} ${first.mechanism}`).toBeCloseTo(
                  first.x2 - first.x1,
                  6,
                );
              }
      }
    expect(groups).toBeGreaterThan(200);
  });
});
