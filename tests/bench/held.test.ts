import { describe, expect, it } from 'vitest';
import { heldAgainst } from './held.ts';

const row = (value: number, unit: string, bound?: number) => ({
  name: 'a figure',
  value,
  unit,
  ...(bound === undefined ? {} : { bound }),
});
/** Half as fast as the machine that bounds are meant for, and a tenth of noise. */
const slow = { slower: 2, noise: 0.1 };

describe('a figure of a benchmark on a machine half as fast', () => {
  it.each([
    ['a time may be twice as long', row(19, 'ms', 10), 20, true],
    ['a little more may be noise', row(21.9, 'ms processor', 10), 20, true],
    ['more than that is not', row(22.1, 's', 10), 20, false],
    ['a rate may be half', row(150, 'per second', 300), 150, true],
    ['a little less may be noise', row(137, 'a second', 300), 150, true],
    ['less than that is not', row(136, 'per second', 300), 150, false],
    ['a size is what it is everywhere', row(110, 'kB', 110), 110, true],
    ['and has no noise', row(110.1, 'kB', 110), 110, false],
    ['so is a count', row(1, 'requests', 0), 0, false],
  ])('%s', (_, figure, here, kept) => {
    expect(heldAgainst(figure, slow)).toEqual({ here, kept });
  });

  it('that should be large is held to be', () => {
    expect(heldAgainst({ ...row(5, 'times', 6), better: 'more' }, slow)).toEqual({ here: 6, kept: false });
    expect(heldAgainst({ ...row(6, 'times', 6), better: 'more' }, slow)).toEqual({ here: 6, kept: true });
  });

  it('without a bound keeps it', () => {
    expect(heldAgainst(row(1e9, 'ms'), slow)).toEqual({ kept: true });
  });
});
