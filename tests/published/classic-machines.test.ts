/**
 * Machines started, moved and timed, as the families make them, against what is published of them. Where no source is
 * named the behaviour is common practice in the trade.
 */
import { describe, expect, it } from 'vitest';
import { families } from '../../src/generator/index.ts';
import { distance, machineOf, planOf, play, solveNetwork } from '../../src/solver/index.ts';
import {
  actuated,
  close,
  open,
  type Panel,
  panels,
  press,
  release,
  tap,
  wait,
} from '../generator/reading.ts';

const COUNT = 12;
const family = (id: string) => families.find((each) => each.id === id)!;
const each = (id: string, sizes: readonly number[], check: (panel: Panel, size: number) => void): void => {
  for (const size of sizes) for (const panel of panels(family(id), size, COUNT)) check(panel, size);
};

describe('start and stop with seal-in (IEC 60204-1: a start by energising, 9.2; no restart when the supply returns, 7.5)', () => {
  const parts = (panel: Panel) => ({
    start: panel.all('push-button', /^Start/)[0]!,
    stop: panel.all('push-button', /^Stop/)[0]!,
    feed: panel.all('breaker', /^Control/).concat(panel.all('fuse', /^Control/))[0]!,
    running: /(running|misting|mixing|washing|pumping|crushing|cutting|hauling|grinding|sifting)$/,
  });

  it('holds after start is let go, stops, and stays stopped', () => {
    each('seal-in', [1, 3, 5, 7], (panel) => {
      const { start, stop, running } = parts(panel);
      expect(panel.after([]).lamp(running)).toBe('dark');
      expect(panel.after(tap(start)).lamp(running)).toBe('lit');
      expect(panel.after([...tap(start), ...tap(stop)]).lamp(running)).toBe('dark');
    });
  });

  it('stays off when the supply comes back', () => {
    each('seal-in', [1, 4, 7], (panel) => {
      const { start, feed, running } = parts(panel);
      expect(panel.after([...tap(start), open(feed)]).lamp(running)).toBe('dark');
      expect(panel.after([...tap(start), open(feed), close(feed)]).lamp(running)).toBe('dark');
      const [supply] = panel.circuit.supplies;
      const acts = [
        ...tap(start),
        { kind: 'fail', supply: supply!.name },
        { kind: 'restore', supply: supply!.name },
      ] as const;
      expect(panel.after(acts).lamp(running)).toBe('dark');
    });
  });

  it('lets stop win over a start that is held', () => {
    each('seal-in', [1, 4], (panel) => {
      const { start, stop, running } = parts(panel);
      expect(panel.after([press(start), press(stop)]).lamp(running)).toBe('dark');
    });
  });
});

describe('jog (common practice, no source)', () => {
  it('runs only while it is held', () => {
    each('jog', [2, 3, 5], (panel) => {
      for (const button of panel.all('push-button', /^Jog/)) {
        expect(panel.after([press(button)]).lamp(/stopped$/)).toBe('dark');
        const let_go = panel.after(tap(button));
        expect(let_go.outcome).toBe('steady');
        expect(let_go.lamp(/stopped$/)).toBe('lit');
      }
    });
  });

  it('with the plain break contact of the jog button the seal may catch on a fast let-go: a race', () => {
    each('jog', [1], (panel) => {
      const button = panel.one('push-button', /^Jog/);
      expect(panel.after([press(button)]).outcome).toBe('steady');
      expect(panel.after(tap(button)).outcome).toBe('race');
    });
  });
});

describe('pump-out between two floats (common practice, no source)', () => {
  it('starts at the high float, stops at the low one, and between them holds what it was', () => {
    each('pump-out', [1, 3, 5], (panel) => {
      const low = panel.one('float-switch', /low$/);
      const high = panel.one('float-switch', /high$/);
      const runs = (acts: Parameters<Panel['after']>[0]) => panel.after(acts).lamp(/ running$/);
      const up = [actuated(panel, low).on, actuated(panel, high).on];
      expect(runs(up.slice(0, 1))).toBe('dark');
      expect(runs(up)).toBe('lit');
      expect(runs([...up, actuated(panel, high).off])).toBe('lit');
      const empty = [...up, actuated(panel, high).off, actuated(panel, low).off];
      expect(runs(empty)).toBe('dark');
      expect(runs([...empty, actuated(panel, low).on])).toBe('dark');
    });
  });
});

describe('interlocked directions (common practice, no source)', () => {
  const coils = (panel: Panel) => panel.all('relay').concat(panel.all('contactor'));

  it('lets the first one win', () => {
    each('interlocked', [1, 2, 3], (panel) => {
      const buttons = panel.all('push-button').filter((name) => !/^Stop/.test(panel.device(name).text!));
      for (const [one, other] of [buttons, [...buttons].reverse()]) {
        const first = panel.after([press(one!)]);
        const both = panel.after([press(one!), press(other!)]);
        const on = coils(panel).filter(first.operated);
        expect(on).toHaveLength(1);
        expect(coils(panel).filter(both.operated)).toEqual(on);
      }
    });
  });

  it('is a race when both are commanded at once', () => {
    each('interlocked', [1, 2, 3], (panel) => {
      const [feed] = panel.all('breaker', /^Control/).concat(panel.all('fuse', /^Control/));
      const buttons = panel.all('push-button').filter((name) => !/^Stop/.test(panel.device(name).text!));
      const { outcome } = panel.after([open(feed!), ...buttons.map(press), close(feed!)]);
      expect(outcome).toBe('race');
    });
  });
});

describe('on-delay and off-delay (International Electrotechnical Vocabulary, IEC 60050)', () => {
  const timerOf = (panel: Panel, kind: 'on-delay' | 'off-delay') => {
    const name = panel.one(kind);
    const device = panel.device(name);
    return { name, seconds: device.kind === kind ? device.seconds : 0 };
  };
  /** The act that energises the timer, and its opposite: the signal may come on a break contact. */
  const signal = (panel: Panel, timer: string) => {
    const { on, off } = actuated(panel, panel.all('field-contact')[0]!);
    return panel.after([]).solution.coils[timer]!.energised
      ? { begin: off, end: on, first: on }
      : { begin: on, end: off, first: undefined };
  };

  it('an on-delay operates when its time is over, begins again when interrupted, and releases at once', () => {
    each('on-delay', [1, 2], (panel) => {
      const { name, seconds } = timerOf(panel, 'on-delay');
      const { begin, end, first } = signal(panel, name);
      const start = first ? [first, begin] : [begin];
      const operated = (...acts: Parameters<Panel['after']>[0]) =>
        panel.after([...start, ...acts]).operated(name);
      expect(operated(wait(0.9 * seconds))).toBe(false);
      expect(operated(wait(1.1 * seconds))).toBe(true);
      expect(operated(wait(0.9 * seconds), end, begin, wait(0.9 * seconds))).toBe(false);
      expect(operated(wait(0.9 * seconds), end, begin, wait(1.1 * seconds))).toBe(true);
      expect(operated(wait(1.1 * seconds), end)).toBe(false);
    });
  });

  it('an off-delay operates at once and counts from the end of the signal', () => {
    each('off-delay', [1, 2], (panel) => {
      const { name, seconds } = timerOf(panel, 'off-delay');
      const { begin, end, first } = signal(panel, name);
      const start = first ? [first, begin] : [begin];
      const operated = (...acts: Parameters<Panel['after']>[0]) =>
        panel.after([...start, ...acts]).operated(name);
      expect(operated()).toBe(true);
      expect(operated(wait(3 * seconds))).toBe(true);
      expect(operated(wait(3 * seconds), end, wait(0.9 * seconds))).toBe(true);
      expect(operated(wait(3 * seconds), end, wait(1.1 * seconds))).toBe(false);
    });
  });
});

describe('duty and standby on a latching relay (common practice, no source)', () => {
  it('keeps its position without supply and through its return', () => {
    each('duty-standby', [1, 3, 5], (panel) => {
      const latch = panel.one('latching-relay');
      const [b, a] = panel.all('push-button');
      const [feed] = panel.all('breaker', /^Control/).concat(panel.all('fuse', /^Control/));
      for (const button of [a!, b!]) {
        const now = panel.after(tap(button)).operated(latch);
        expect(panel.after([...tap(button), open(feed!)]).operated(latch)).toBe(now);
        expect(panel.after([...tap(button), open(feed!), close(feed!)]).operated(latch)).toBe(now);
      }
      expect(panel.after(tap(a!)).operated(latch)).not.toBe(panel.after(tap(b!)).operated(latch));
    });
  });

  it('calls the standby when the duty trips', () => {
    each('duty-standby', [4, 5], (panel) => {
      const wanted = actuated(panel, panel.one('field-contact')).on;
      const runs = panel.all('relay');
      const before = runs.filter(panel.after([wanted]).operated);
      expect(before).toHaveLength(1);
      const tripped = panel.all('overload').map((device) => ({ kind: 'trip', device }) as const);
      const after = tripped.map((trip) => runs.filter(panel.after([wanted, trip]).operated));
      // A trip of the duty moves the run to the other; one of the standby changes nothing.
      expect(after.map((on) => on.length)).toEqual([1, 1]);
      expect(after.filter(([on]) => on !== before[0])).toHaveLength(1);
    });
  });
});

describe('two-hand control (ISO 13851, type III: within 0.5 s, both let go before it acts again)', () => {
  it('acts on two hands within half a second and not on two later ones', () => {
    each('two-hand', [1, 2, 4], (panel) => {
      const [one, other] = panel.all('push-button');
      expect(panel.after([press(one!), wait(0.3), press(other!)]).lamp(/ standing$/)).toBe('dark');
      expect(panel.after([press(one!), wait(0.7), press(other!)]).lamp(/ standing$/)).toBe('lit');
      expect(panel.after([press(one!)]).lamp(/ standing$/)).toBe('lit');
    });
  });

  it('stops with either hand and wants both let go before it acts again', () => {
    each('two-hand', [1, 2, 4], (panel) => {
      const [one, other] = panel.all('push-button');
      const running = [press(one!), press(other!), wait(2)];
      expect(panel.after(running).lamp(/ standing$/)).toBe('dark');
      const stopped = [...running, release(other!)];
      expect(panel.after(stopped).lamp(/ standing$/)).toBe('lit');
      expect(panel.after([...stopped, press(other!)]).lamp(/ standing$/)).toBe('lit');
      expect(panel.after([...stopped, release(one!), press(one!), press(other!)]).lamp(/ standing$/)).toBe(
        'dark',
      );
    });
  });
});

describe('star-delta', () => {
  const parts = (panel: Panel) => {
    const timer = panel.one('on-delay');
    const device = panel.device(timer);
    return {
      start: panel.one('push-button', /^Start/),
      star: panel.one('contactor', / star$/),
      delta: panel.one('contactor', / delta$/),
      main: panel.one('contactor', / main$/),
      motor: panel.one('motor'),
      seconds: device.kind === 'on-delay' ? device.seconds : 0,
    };
  };

  it('starts in star, goes over to delta and never has both, at any moment of the run', () => {
    each('star-delta', [1, 2, 3, 4], (panel) => {
      const { start, star, delta, main, seconds } = parts(panel);
      const early = panel.after([...tap(start), wait(0.8 * seconds)]);
      expect([main, star, delta].map(early.operated)).toEqual([true, true, false]);
      const late = panel.after([...tap(start), wait(1.5 * seconds)]);
      expect([main, star, delta].map(late.operated)).toEqual([true, false, true]);
      const away = new Set<string>();
      for (const { what, device, to } of late.solution.steps) {
        if (what === 'leaves' && to === 'operated') away.add(device);
        if (what === 'arrives' && to === 'rest') away.delete(device);
        expect(away.has(star) && away.has(delta)).toBe(false);
      }
    });
  });

  it('in star gives each winding 58 % of its voltage and draws a third of the delta current from the line', () => {
    for (const panel of panels(family('star-delta'), 1, 3)) {
      const { start, motor, seconds } = parts(panel);
      const at = (acts: Parameters<Panel['after']>[0]) => {
        const machine = machineOf(planOf(panel.circuit));
        const { state } = play(machine, { start: 'live', acts: [...acts] });
        const network = solveNetwork(machine, state.at, state.supplyOn);
        const windings = machine.plan.loads.filter(({ device }) => device === motor);
        const across = windings.map(({ a, b }) => network.volts.map((along) => along[a]! - along[b]!));
        // The conductor of L1 reaches the start of winding U, and in delta the end of another winding too.
        const line = machine.plan.nodeOf.get(`${motor}:U1`)!;
        const amps = network.volts.map(() => 0);
        windings.forEach(({ a, b, siemens }, index) => {
          const joined = (node: number) => distance(network.volts, node, line) < 1e-6;
          const sign = joined(a) ? 1 : joined(b) ? -1 : 0;
          across[index]!.forEach((volts, axis) => {
            amps[axis]! += sign * siemens * volts;
          });
        });
        return { volts: across.map((parts) => Math.hypot(...parts)), amps: Math.hypot(...amps) };
      };
      const star = at([...tap(start), wait(0.5 * seconds)]);
      const delta = at([...tap(start), wait(2 * seconds)]);
      for (const volts of delta.volts) expect(volts).toBeCloseTo(400, 3);
      for (const volts of star.volts) expect(volts / 400).toBeCloseTo(1 / Math.sqrt(3), 6);
      expect(star.amps / delta.amps).toBeCloseTo(1 / 3, 6);
    }
  });
});
