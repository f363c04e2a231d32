import type { Plan } from './plan.ts';

/** Counts for more than any number of switches at a node that could be taken away: it is no dead end. */
const HELD = 0x10000000;

/**
 * By switch: 1 where it leads nowhere, because at one of its ends there is nothing else, or only switches that lead nowhere:
 * mostly the legs and poles of relays that aren't used. No current ever goes through it and no load hangs on it, whatever
 * moves. Feeding devices are left in.
 */
export function deadEnds({ nodes, switches, loads, supplies, joins, mechanisms }: Plan): Uint8Array {
  const degree = new Int32Array(nodes);
  // The numbers of the switches at a node, one over the other: where one is left it is that one's.
  const number = new Int32Array(nodes);
  const hold = (node: number): void => {
    degree[node] = HELD;
  };
  for (const { a, b } of loads) {
    hold(a);
    hold(b);
  }
  for (const { poles } of supplies) for (const pole of poles) hold(pole.node);
  for (const pair of joins) pair.forEach(hold);
  for (let index = 0; index < switches.length; index++) {
    const { a, b } = switches[index]!;
    degree[a] = degree[a]! + 1;
    degree[b] = degree[b]! + 1;
    number[a] = number[a]! ^ index;
    number[b] = number[b]! ^ index;
  }
  const idle = new Uint8Array(switches.length);
  for (let begin = 0; begin < nodes; begin++) {
    for (let node = begin; degree[node] === 1; ) {
      const index = number[node]!;
      const { a, b, mechanism } = switches[index]!;
      if (mechanism < 0 || mechanisms[mechanism]!.drive === 'feed') break;
      idle[index] = 1;
      degree[node] = 0;
      node = node === a ? b : a;
      degree[node] = degree[node]! - 1;
      number[node] = number[node]! ^ index;
    }
  }
  return idle;
}

/**
 * The plan without contacts that lead nowhere, for whoever asks it for voltages and positions alone. Of each mechanism the
 * first pole stays, and the first main one: by these is told what is a make, and which pole is the first.
 */
export function withoutDeadEnds(plan: Plan): Plan {
  const idle = deadEnds(plan);
  const first = new Int32Array(2 * plan.mechanisms.length).fill(-1);
  const switches = plan.switches.filter(({ mechanism, pole, main }, index) => {
    if (mechanism < 0) return true;
    const row = 2 * mechanism + (main ? 1 : 0);
    if (first[row] === -1) first[row] = pole;
    return idle[index] === 0 || pole === first[row];
  });
  return { ...plan, switches };
}
