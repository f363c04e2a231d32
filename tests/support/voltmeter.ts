/**
 * An independent voltmeter: eecircuit-engine, a general circuit analysis library. Direct voltages are its operating point,
 * alternating ones its small-signal analysis at 50 Hz (all loads are resistances), each with the other kind of source
 * short. Traps of it are fenced off here: a failed run returns the previous run's figures, so every netlist carries a
 * marker node with a voltage of its own; and a node that nothing holds comes out as 0 V, so every net is joined to ground by
 * 100 GOhm (1 GOhm would draw millivolts over the coils of 230 V relays).
 */
import { Simulation } from 'eecircuit-engine';
import { netsOf, type Wiring } from './wiring.ts';

/** Direct volts, and the r.m.s. phasor of alternating ones. */
export type Parts = readonly [direct: number, re: number, im: number];

export interface Measured {
  /** Volts from one terminal to another. */
  readonly between: (one: string, other: string) => Parts;
  /** Whether two terminals are joined through anything, so that a voltage between them means something. */
  readonly together: (one: string, other: string) => boolean;
}

const BLEEDER = '100g';

/** Terminals by name, their nets numbered. */
function numbered(wiring: Wiring): Map<string, number> {
  const netOf = netsOf(wiring);
  const numbers = new Map<string, number>();
  const result = new Map<string, number>();
  for (const terminal of wiring.terminals) {
    const net = netOf(terminal);
    if (!numbers.has(net)) numbers.set(net, numbers.size + 1);
    result.set(terminal, numbers.get(net)!);
  }
  return result;
}

function lines(wiring: Wiring, prefix: string, number: ReadonlyMap<string, number>): string[] {
  const earths = new Set(wiring.earths.map((terminal) => number.get(terminal)));
  const node = (terminal: string): string => {
    const net = number.get(terminal);
    return earths.has(net) ? '0' : `${prefix}_${net}`;
  };
  const found: string[] = [];
  // A source between nets that others hold already (two equal supplies in parallel) would make the matrix singular.
  const held = new Map<string, string>();
  const root = (at: string): string => (held.has(at) ? root(held.get(at)!) : at);
  wiring.sources.forEach((source, index) => {
    const [plus, minus] = [root(node(source.plus)), root(node(source.minus))];
    if (plus === minus) return;
    held.set(plus, minus);
    const { direct, re, im } = source;
    const degrees = (Math.atan2(im, re) * 180) / Math.PI;
    found.push(
      `V${prefix}_${index} ${node(source.plus)} ${node(source.minus)} DC ${direct} AC ${Math.hypot(re, im)} ${degrees}`,
    );
  });
  wiring.resistors.forEach(({ from, to, ohms }, index) => {
    if (node(from) !== node(to)) found.push(`R${prefix}_${index} ${node(from)} ${node(to)} ${ohms}`);
  });
  for (const net of new Set(number.values()))
    if (!earths.has(net)) found.push(`R${prefix}_b${net} ${prefix}_${net} 0 ${BLEEDER}`);
  return found;
}

/** Connected through resistors, sources or the earth. */
function parts(wiring: Wiring): (terminal: string) => string {
  return netsOf({
    ...wiring,
    joined: [
      ...wiring.joined,
      ...wiring.resistors.map(({ from, to }) => [from, to] as const),
      ...wiring.sources.map(({ plus, minus }) => [plus, minus] as const),
      ...wiring.earths.map((terminal) => [terminal, 'earth'] as const),
    ],
  });
}

export class Voltmeter {
  private readonly simulation = new Simulation();
  private runs = 0;

  async start(): Promise<this> {
    await this.simulation.start();
    return this;
  }

  /** Node voltages of a netlist's body by name, from one analysis: complex numbers. */
  private async analyse(body: readonly string[], analysis: string): Promise<Map<string, [number, number]>> {
    const mark = 1 + ++this.runs / 1024;
    this.simulation.setNetList(
      ['measured', ...body, `Vmark mark 0 DC ${mark} AC ${mark}`, analysis, '.end'].join('\n'),
    );
    // After some errors the library never answers.
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<never>((_, refuse) => {
      timer = setTimeout(() => refuse(new Error('the circuit library does not answer')), 300_000);
    });
    const result = await Promise.race([this.simulation.runSim(), late]);
    clearTimeout(timer);
    const complaint = this.simulation.getError().find((line) => /error|abort|singular/i.test(line));
    if (complaint) throw new Error(`the circuit library refused a netlist: ${complaint}`);
    const named = (name: string): string => name.replace(/^v\((.*)\)$/, '$1');
    const volts = new Map<string, [number, number]>(
      result.dataType === 'real'
        ? result.data.map(({ name, values }) => [named(name), [values[0]!, 0]])
        : result.data.map(({ name, values }) => [named(name), [values[0]!.real, values[0]!.img]]),
    );
    if (Math.abs((volts.get('mark')?.[0] ?? 0) - mark) > 1e-9)
      throw new Error('the circuit library did not run');
    return volts;
  }

  /** The raw operating point of a netlist's body: node voltages by name. */
  async operatingPoint(body: readonly string[]): Promise<Map<string, number>> {
    const found = await this.analyse(body, '.op');
    return new Map([...found].map(([name, [volts]]) => [name, volts]));
  }

  /** Measures many circuits in one run; where any has alternating current in another run that too. */
  async measure(wirings: readonly Wiring[]): Promise<Measured[]> {
    const numbers = wirings.map(numbered);
    const body = wirings.flatMap((wiring, index) => lines(wiring, `a${index}`, numbers[index]!));
    const direct = await this.operatingPoint(body);
    const alternates = wirings.some(({ sources }) => sources.some(({ re, im }) => re !== 0 || im !== 0));
    const phasors = alternates ? await this.analyse(body, '.ac lin 1 50 50') : undefined;
    return wirings.map((wiring, index) => {
      const number = numbers[index]!;
      const partOf = parts(wiring);
      const earths = new Set(wiring.earths.map((terminal) => number.get(terminal)));
      const at = (terminal: string): Parts => {
        if (earths.has(number.get(terminal))) return [0, 0, 0];
        const name = `a${index}_${number.get(terminal)}`;
        const volts = direct.get(name);
        if (volts === undefined) throw new Error(`nothing measured at ${terminal}`);
        return [volts, ...(phasors?.get(name) ?? ([0, 0] as const))];
      };
      return {
        between: (one, other) => {
          const [first, second] = [at(one), at(other)];
          return [first[0] - second[0], first[1] - second[1], first[2] - second[2]];
        },
        together: (one, other) => partOf(one) === partOf(other),
      };
    });
  }
}
