/** The circuits everyone is asked about, as the families make them. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { actsOn, traitsOf } from '../../src/circuit/index.ts';
import { machineOf, meter, planOf, play } from '../../src/solver/index.ts';
import { actuated, eachPanel, open, type Panel, press, watching } from '../generator/reading.ts';

describe('one leg wired', () => {
  it('a lamp on the break leg is lit at rest, dark energised, lit again on release', () => {
    eachPanel('break-only', [1], (panel) => {
      for (const relay of panel.all('relay')) {
        const hold = { kind: 'hold', device: relay } as const;
        const lit = (acts: Parameters<Panel['after']>[0]) =>
          Object.values(panel.after(acts).solution.lamps).filter((lamp) => lamp === 'lit').length;
        const before = lit([]);
        expect(lit([hold])).toBe(before - 1);
        expect(lit([hold, { kind: 'free', device: relay }])).toBe(before);
      }
    });
  });

  it('a lamp on the make leg is dark at rest, lit energised, dark again on release', () => {
    eachPanel('make-only', [1], (panel) => {
      for (const relay of panel.all('relay')) {
        const hold = { kind: 'hold', device: relay } as const;
        const lit = (acts: Parameters<Panel['after']>[0]) =>
          Object.values(panel.after(acts).solution.lamps).filter((lamp) => lamp === 'lit').length;
        const before = lit([]);
        expect(lit([hold])).toBe(before + 1);
        expect(lit([hold, { kind: 'free', device: relay }])).toBe(before);
      }
    });
  });
});

describe('status pair on a changeover', () => {
  it('has exactly one lamp of each pair lit, whatever the relays do', () => {
    eachPanel('status-pair', [1, 3, 6], (panel, size) => {
      const relays = watching(panel);
      const supplyLamps = panel.all('lamp', /^Control supply on$/).length;
      for (let held = 0; held <= relays.length; held++) {
        const acts = relays.slice(0, held).map((device) => ({ kind: 'hold', device }) as const);
        const { lamps } = panel.after(acts).solution;
        expect(Object.values(lamps).filter((lamp) => lamp === 'lit')).toHaveLength(size + supplyLamps);
        expect(Object.values(lamps).filter((lamp) => lamp === 'dark')).toHaveLength(size);
      }
    });
  });
});

describe('healthy when energised', () => {
  it('shows the fault on the fault itself, a broken wire, an open coil and a lost control supply', () => {
    eachPanel('healthy-relay', [2, 4], (panel, size) => {
      const lit = (acts: Parameters<Panel['after']>[0], faults: Parameters<Panel['after']>[1] = []) =>
        panel.after(acts, faults).solution;
      const relays = watching(panel);
      const healthy = lit([]);
      for (const relay of relays) expect(healthy.coils[relay]!.operated).toBe(true);
      const restLamps = Object.entries(healthy.lamps)
        .filter(([, lamp]) => lamp === 'lit')
        .map(([name]) => name);
      expect(restLamps).toHaveLength(size);
      const coilPath = panel.circuit.paths.find(({ steps }) =>
        steps.some(({ device, enter }) => device === relays[0] && enter === 'A1'),
      )!;
      const sensor = coilPath.steps.find(({ device }) => device.startsWith('-B'))!;
      const showsOne = [
        lit([actuated(panel, sensor.device).on]),
        lit([], [{ kind: 'loose', at: `${sensor.device}:${sensor.enter}` }]),
        lit([], [{ kind: 'loose', at: `${relays[0]}:A1` }]),
        lit([], [{ kind: 'open', from: `${relays[0]}:A1`, to: `${relays[0]}:A2` }]),
      ];
      for (const shown of showsOne) {
        expect(shown.coils[relays[0]!]!.operated).toBe(false);
        const now = Object.entries(shown.lamps)
          .filter(([, lamp]) => lamp === 'lit')
          .map(([name]) => name);
        expect(now).toHaveLength(size);
        expect(restLamps.filter((name) => now.includes(name))).toHaveLength(size - 1);
      }
      const control = panel.circuit.devices.find(({ text }) => text === 'Control supply')!.name;
      const lost = lit([open(control)]);
      expect(restLamps.map((name) => lost.lamps[name])).toEqual(restLamps.map(() => 'dark'));
      expect(Object.values(lost.lamps).filter((lamp) => lamp === 'lit')).toHaveLength(size);
    });
  });
});

describe('two poles on isolated supplies (galvanic isolation of poles)', () => {
  it('never gives the two supplies a common reference', () => {
    eachPanel('two-supplies', [1, 4], ({ circuit, draft }) => {
      const machine = machineOf(planOf(circuit));
      const { state } = play(machine, draft.scenario);
      const [one, other] = circuit.supplies;
      const pole = (supply: typeof one) => `${supply!.name}:${supply!.current === 'DC' ? 'L+' : 'L'}`;
      expect(meter(machine, state, pole(one), pole(other)).floating).toBe(true);
    });
  });

  it('keeps the inputs reading when the lamp supply is gone, each by its pole at rest', () => {
    eachPanel('two-supplies', [1, 4], (panel) => {
      const control = panel.circuit.devices.find(({ text }) => text === 'Control supply')!.name;
      const lost = panel.after([open(control)]).solution;
      expect(new Set(Object.values(lost.lamps))).toEqual(new Set(['dark']));
      for (const point of panel.draft.inputs) {
        const name = point.split(':')[1]!;
        const path = panel.circuit.paths.find(({ steps }) =>
          steps.some(({ device, enter }) => `${device}:${enter}` === point),
        )!;
        const leg = path.steps.find(({ device, leave }) => /^-[KB]/.test(device) && leave !== undefined)!;
        expect(lost.inputs[point], name).toBe(leg.leave!.endsWith('2') ? '1' : '0');
      }
    });
  });
});

describe('relay chain', () => {
  it('moves the second relay by the first: by its make leg with it, by its break leg against it', () => {
    eachPanel('relay-chain', [1], (panel) => {
      const [first, second] = panel.all('relay').sort((a, b) => {
        const fed = (name: string) =>
          panel.circuit.paths.findIndex(
            ({ steps }) =>
              steps.some(({ device, enter }) => device === name && enter === 'A1') &&
              steps.some(
                ({ device, leave }) => device !== name && device.startsWith('-K') && leave !== undefined,
              ),
          );
        return fed(a) - fed(b);
      });
      const path = panel.circuit.paths.find(({ steps }) =>
        steps.some(({ device, enter }) => device === second && enter === 'A1'),
      )!;
      const contact = path.steps.find(({ device, leave }) => device === first && leave !== undefined)!;
      const byMake = contact.leave!.endsWith('4');
      for (const device of panel
        .all('field-contact')
        .concat(panel.all('limit-switch'), panel.all('float-switch'))) {
        for (const acts of [[], [actuated(panel, device).on]]) {
          const { operated } = panel.after(acts);
          expect(operated(second!)).toBe(operated(first!) === byMake);
        }
      }
    });
  });
});

describe('permissive chain (pressure switches are break because "normal" is no pressure)', () => {
  it('runs when every condition holds and stops with any single one of them', () => {
    eachPanel('permissive', [1, 3, 4], (panel) => {
      const relay = panel.one('relay');
      const coil = panel.circuit.paths.find(({ steps }) =>
        steps.some(({ device, enter }) => device === relay && enter === 'A1'),
      )!;
      const conditions = coil.steps.filter(({ device }) => device.startsWith('-B'));
      const well = conditions.map(({ device, enter, leave }) => {
        const { on, off } = actuated(panel, device);
        const breakContact = enter.endsWith('1') && leave?.endsWith('2');
        return breakContact ? { good: undefined, bad: on } : { good: on, bad: off };
      });
      const goods = well.flatMap(({ good }) => good ?? []);
      expect(panel.after(goods).operated(relay)).toBe(true);
      for (const { bad } of well) expect(panel.after([...goods, bad]).operated(relay)).toBe(false);
    });
  });
});

describe('flasher', () => {
  it('has no steady state while it is energised and rests when it is not', () => {
    eachPanel('flashing', [1, 3], (panel) => {
      const flasher = panel.one('flasher');
      expect(panel.after([]).outcome).toBe('steady');
      // Everything goes wrong at once.
      const wrong = panel.circuit.devices.flatMap((device) =>
        traitsOf(device).movedBy === 'plant' ? actsOn(device).slice(0, 1) : [],
      );
      const energised = panel.after(wrong);
      expect(energised.outcome).toBe('keeps-switching');
      expect(energised.solution.outcome).toEqual({ kind: 'keeps-switching', devices: [flasher] });
      expect(Object.values(energised.solution.lamps)).toContain('flashing');
    });
  });
});

describe('lamp test', () => {
  it('lights every lamp that has a contact of the test relay and moves no output', () => {
    eachPanel('lamp-test', [1, 4, 7], (panel) => {
      const button = panel.one('push-button', /^Lamp test$/);
      const testRelays = new Set(panel.all('relay', /^Lamp test$/));
      const before = panel.after([]).solution;
      const after = panel.after([press(button)]).solution;
      const tested = panel.circuit.paths.flatMap(({ steps }, index) => {
        if (
          !steps.some(({ device, leave }) => testRelays.has(device) && leave !== undefined && leave !== 'A2')
        )
          return [];
        // The other way to the same lamp may be the main line: it is the path that holds the lamp, here or just before.
        const lampIn = (at: number) =>
          panel.circuit.paths[at]?.steps.find(({ device }) => device.startsWith('-H'))?.device;
        return [lampIn(index) ?? lampIn(index - 1)!].filter((lamp) => lamp in after.lamps);
      });
      expect(tested.length).toBeGreaterThan(0);
      for (const lamp of tested) expect(after.lamps[lamp]).toBe('lit');
      for (const [name, state] of Object.entries(before.lamps))
        if (!tested.includes(name)) expect(after.lamps[name]).toBe(state);
      expect(after.loads).toEqual(before.loads);
    });
  });
});
