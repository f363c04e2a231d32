/**
 * The circuits everyone is asked about, as the families make them, against what is published of them. Where no source is
 * named the behaviour is common practice in the trade.
 */
import { describe, expect, it } from 'vitest';
import { families } from '../../src/generator/index.ts';
import { machineOf, meter, planOf, play } from '../../src/solver/index.ts';
import { actuated, open, type Panel, panels, press, tap } from '../generator/reading.ts';

const COUNT = 12;
const family = (id: string) => families.find((each) => each.id === id)!;
const each = (id: string, sizes: readonly number[], check: (panel: Panel, size: number) => void): void => {
  for (const size of sizes) for (const panel of panels(family(id), size, COUNT)) check(panel, size);
};

describe('one leg wired (common practice, no source)', () => {
  it('a lamp on the break leg is lit at rest, dark energised, lit again on release', () => {
    each('break-only', [1], (panel) => {
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
    each('make-only', [1], (panel) => {
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

describe('status pair on a changeover (common practice, no source)', () => {
  it('has exactly one lamp of each pair lit, whatever the relays do', () => {
    each('status-pair', [1, 3, 6], (panel, size) => {
      const relays = panel.all('relay');
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

describe('healthy when energised (common practice, no source)', () => {
  it('shows the fault on the fault itself, a broken wire, an open coil and a lost control supply', () => {
    each('healthy-relay', [2, 4], (panel, size) => {
      const lit = (acts: Parameters<Panel['after']>[0], faults: Parameters<Panel['after']>[1] = []) =>
        panel.after(acts, faults).solution;
      const relays = panel.all('relay');
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

describe('two poles on isolated supplies (galvanic isolation of poles: common practice, no source)', () => {
  it('never gives the two supplies a common reference', () => {
    each('two-supplies', [1, 4], ({ circuit, draft }) => {
      const machine = machineOf(planOf(circuit));
      const { state } = play(machine, draft.scenario);
      const [one, other] = circuit.supplies;
      const pole = (supply: typeof one) => `${supply!.name}:${supply!.current === 'DC' ? 'L+' : 'L'}`;
      expect(meter(machine, state, pole(one), pole(other)).floating).toBe(true);
    });
  });

  it('keeps the inputs reading when the lamp supply is gone, each by its pole at rest', () => {
    each('two-supplies', [1, 4], (panel) => {
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

describe('relay chain (common practice, no source)', () => {
  it('moves the second relay by the first: by its make leg with it, by its break leg against it', () => {
    each('relay-chain', [1], (panel) => {
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

describe('permissive chain (common practice, no source; pressure switches are break because "normal" is no pressure)', () => {
  it('runs when every condition holds and stops with any single one of them', () => {
    each('permissive', [1, 3, 4], (panel) => {
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

describe('two out of three: AB + BC + CA, its own dual', () => {
  it('trips on two of three and on no fewer, with plain and with broken signals', () => {
    each('two-out-of-three', [1, 2, 3], (panel) => {
      const sensors = panel.all('field-contact').concat(panel.all('limit-switch'), panel.all('float-switch'));
      expect(sensors).toHaveLength(3);
      for (let row = 0; row < 8; row++) {
        const on = sensors.filter((_, index) => (row >> index) & 1);
        const reading = panel.after(on.map((sensor) => actuated(panel, sensor).on));
        expect(reading.outcome).toBe('steady');
        expect(reading.lamp(/ well$/)).toBe(on.length >= 2 ? 'dark' : 'lit');
      }
    });
  });
});

describe('flasher (common practice, no source)', () => {
  it('has no steady state while it is energised and rests when it is not', () => {
    each('flashing', [1, 3], (panel) => {
      const flasher = panel.one('flasher');
      expect(panel.after([]).outcome).toBe('steady');
      const energised = panel.after(panel.all('relay').map((device) => ({ kind: 'hold', device }) as const));
      expect(energised.outcome).toBe('keeps-switching');
      expect(energised.solution.outcome).toEqual({ kind: 'keeps-switching', devices: [flasher] });
      expect(Object.values(energised.solution.lamps)).toContain('flashing');
    });
  });
});

describe('lamp test (common practice, no source)', () => {
  it('lights every lamp that has a contact of the test relay and moves no output', () => {
    each('lamp-test', [1, 4, 7], (panel) => {
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
        return [lampIn(index) ?? lampIn(index - 1)!];
      });
      expect(tested.length).toBeGreaterThan(0);
      for (const lamp of tested) expect(after.lamps[lamp]).toBe('lit');
      for (const [name, state] of Object.entries(before.lamps))
        if (!tested.includes(name)) expect(after.lamps[name]).toBe(state);
      expect(after.loads).toEqual(before.loads);
    });
  });
});

describe('alarm with acknowledge (ISA-18.1: flashing and sounding, steady and silent, off; one that clears first keeps flashing)', () => {
  it('goes through the sequence', () => {
    each('acknowledged-alarm', [1], (panel) => {
      const sensor = panel
        .all('field-contact')
        .concat(panel.all('limit-switch'), panel.all('float-switch'))[0]!;
      // A break contact: the alarm has come when it opens the drawing's closed contact, so let it be actuated first.
      const quiet = actuated(panel, sensor);
      const closedAtRest = panel.after([]).outcome === 'keeps-switching';
      const [begin, end] = closedAtRest ? [quiet.off, quiet.on] : [quiet.on, quiet.off];
      const ack = panel.one('push-button', /^Acknowledge$/);
      const horn = panel.one('sounder', /^Horn$/);
      const lamp = (acts: Parameters<Panel['after']>[0]) => {
        const first = closedAtRest ? [quiet.on, ...tap(ack)] : [];
        const { lamps, loads } = panel.after([...first, ...acts]).solution;
        const shown = panel
          .all('lamp')
          .filter((name) => !/^(Nothing new|Control supply on)$/.test(panel.device(name).text!));
        return [lamps[shown[0]!], loads[horn]];
      };
      expect(lamp([])).toEqual(['dark', 'dark']);
      expect(lamp([begin])).toEqual(['flashing', 'lit']);
      expect(lamp([begin, ...tap(ack)])).toEqual(['lit', 'dark']);
      expect(lamp([begin, ...tap(ack), end])).toEqual(['dark', 'dark']);
      expect(lamp([begin, end])).toEqual(['flashing', 'lit']);
      expect(lamp([begin, end, ...tap(ack)])).toEqual(['dark', 'dark']);
    });
  });

  it('sounds again for a second alarm after the first was acknowledged', () => {
    each('acknowledged-alarm', [2], (panel) => {
      const sensors = panel.all('field-contact').concat(panel.all('limit-switch'), panel.all('float-switch'));
      if (panel.after([]).outcome === 'keeps-switching') return;
      const [one, other] = sensors.map((name) => actuated(panel, name).on);
      const ack = panel.one('push-button', /^Acknowledge$/);
      const horn = panel.one('sounder', /^Horn$/);
      const silent = panel.after([one!, ...tap(ack)]).solution;
      expect(silent.loads[horn]).toBe('dark');
      const second = panel.after([one!, ...tap(ack), other!]).solution;
      expect(second.loads[horn]).toBe('lit');
      expect(Object.values(second.lamps)).toEqual(expect.arrayContaining(['lit', 'flashing']));
    });
  });
});
