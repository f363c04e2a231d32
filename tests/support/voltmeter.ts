/**
 * An independent voltmeter: the operating point of eecircuit-engine, a general circuit analysis library. Two traps of it
 * are fenced off here. A failed run returns the previous run's figures, so every netlist carries a marker node with a
 * voltage of its own; and a node that nothing holds comes out as 0 V, so every net is joined to ground by 100 GOhm (1 GOhm would draw millivolts over the coils of 230 V relays).
 */
import { Simulation } from 'eecircuit-engine';
import { netsOf, type Wiring } from './wiring.ts';

export interface Measured {
  /** Potential of a terminal against an arbitrary ground. */
  readonly re: (terminal: string) => number;
  readonly im: (terminal: string) => number;
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

function lines(
  wiring: Wiring,
  prefix: string,
  axis: 're' | 'im',
  number: ReadonlyMap<string, number>,
): string[] {
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
    found.push(`V${prefix}_${index} ${node(source.plus)} ${node(source.minus)} ${source[axis]}`);
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

  /** The raw operating point of a netlist's body: node voltages by name. */
  async operatingPoint(body: readonly string[]): Promise<Map<string, number>> {
    const mark = 1 + ++this.runs / 1024;
    this.simulation.setNetList(
      ['operating point', ...body, `Vmark mark 0 ${mark}`, '.op', '.end'].join('\n'),
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
    if (result.dataType !== 'real') throw new Error('an operating point is real');
    const volts = new Map(
      result.data.map(({ name, values }) => [name.replace(/^v\((.*)\)$/, '$1'), values[0]!]),
    );
    if (Math.abs((volts.get('mark') ?? 0) - mark) > 1e-9) throw new Error('the circuit library did not run');
    return volts;
  }

  /** Measures many circuits in one run; phases are measured as two networks side by side. */
  async measure(wirings: readonly Wiring[]): Promise<Measured[]> {
    const numbers = wirings.map(numbered);
    const phases = wirings.map(({ sources }) => sources.some(({ im }) => im !== 0));
    const body = wirings.flatMap((wiring, index) => [
      ...lines(wiring, `a${index}`, 're', numbers[index]!),
      ...(phases[index] ? lines(wiring, `b${index}`, 'im', numbers[index]!) : []),
    ]);
    const volts = await this.operatingPoint(body);
    return wirings.map((wiring, index) => {
      const number = numbers[index]!;
      const partOf = parts(wiring);
      const earths = new Set(wiring.earths.map((terminal) => number.get(terminal)));
      const at =
        (prefix: string) =>
        (terminal: string): number => {
          if (earths.has(number.get(terminal))) return 0;
          const found = volts.get(`${prefix}${index}_${number.get(terminal)}`);
          if (found === undefined) throw new Error(`nothing measured at ${terminal}`);
          return found;
        };
      return {
        re: at('a'),
        im: phases[index] ? at('b') : () => 0,
        together: (one, other) => partOf(one) === partOf(other),
      };
    });
  }
}
