/** Which lamps are lit in a state, by what their colours say (IEC 60204-1, 10.3.2). */
import type { Circuit, Colour } from '../../shared/circuit.ts';
import type { Machine } from './machine.ts';
import { lampStateAt } from './readings.ts';
import type { State } from './state.ts';

/** All in order; and what is no longer so: abnormal, or an emergency. */
const WELL: readonly Colour[] = ['green'];
const WARNING: readonly Colour[] = ['red', 'yellow', 'amber'];

export interface Shown {
  readonly well: ReadonlySet<string>;
  readonly warning: ReadonlySet<string>;
}

/** Reads lamps of one circuit, whatever machine its plan is compiled to. */
export class ShownLamps {
  private readonly well: ReadonlySet<string>;
  private readonly warning: ReadonlySet<string>;

  constructor({ devices }: Circuit) {
    const coloured = (colours: readonly Colour[]): ReadonlySet<string> =>
      new Set(
        devices.flatMap((device) =>
          'colour' in device && device.colour && colours.includes(device.colour) ? [device.name] : [],
        ),
      );
    this.well = coloured(WELL);
    this.warning = coloured(WARNING);
  }

  /** Whether there is any lamp that says that all is well. */
  get any(): boolean {
    return this.well.size > 0;
  }

  in(machine: Machine, state: State): Shown {
    const lit = machine.plan.loads.flatMap(({ id }, load) => {
      const says = this.well.has(id) || this.warning.has(id);
      return says && lampStateAt(machine, state, load) === 'lit' ? [id] : [];
    });
    return {
      well: new Set(lit.filter((id) => this.well.has(id))),
      warning: new Set(lit.filter((id) => this.warning.has(id))),
    };
  }
}
