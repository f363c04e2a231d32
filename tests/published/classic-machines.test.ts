/**
 * Machines started, moved and timed, as the families make them, against what is published of them. What is only
 * common practice is in tests/practice-of-the-trade.
 */
import { describe, expect, it } from 'vitest';
import { families } from '../../src/generator/index.ts';
import { distance, machineOf, planOf, play, solveNetwork } from '../../src/solver/index.ts';
import {
  actuated,
  close,
  eachPanel,
  open,
  type Panel,
  panels,
  press,
  release,
  tap,
  wait,
} from '../generator/reading.ts';

describe('start and stop with seal-in (IEC 60204-1: a start by energising, 9.2; no restart when the supply returns, 7.5)', () => {
  const parts = (panel: Panel) => ({
    start: panel.all('push-button', /^Start/)[0]!,
    stop: panel.all('push-button', /^Stop/)[0]!,
    feed: panel.all('breaker', /^Control/).concat(panel.all('fuse', /^Control/))[0]!,
    running: /(running|misting|mixing|washing|pumping|crushing|cutting|hauling|grinding|sifting)$/,
  });

  it('holds after start is let go, stops, and stays stopped', () => {
    eachPanel('seal-in', [1, 3, 5, 7], (panel) => {
      const { start, stop, running } = parts(panel);
      expect(panel.after([]).lamp(running)).toBe('dark');
      expect(panel.after(tap(start)).lamp(running)).toBe('lit');
      expect(panel.after([...tap(start), ...tap(stop)]).lamp(running)).toBe('dark');
    });
  });

  it('stays off when the supply comes back', () => {
    eachPanel('seal-in', [1, 4, 7], (panel) => {
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
    eachPanel('seal-in', [1, 4], (panel) => {
      const { start, stop, running } = parts(panel);
      expect(panel.after([press(start), press(stop)]).lamp(running)).toBe('dark');
    });
  });
});

describe('on-delay and off-delay (International Electrotechnical Vocabulary, IEC 60050)', () => {
  const timerOf = (panel: Panel, ...kinds: ('on-delay' | 'off-delay' | 'supplied-off-delay')[]) => {
    const [name] = kinds.flatMap((kind) => panel.all(kind));
    const device = panel.device(name!);
    return { name: name!, kind: device.kind, seconds: 'seconds' in device ? device.seconds : 0 };
  };
  /** The act that energises the timer, and its opposite: the signal may come on a break contact. */
  const signal = (panel: Panel, timer: string) => {
    const [sensor] = panel.circuit.devices.filter(({ name }) => name.startsWith('-B'));
    const { on, off } = actuated(panel, sensor!.name);
    return panel.after([]).solution.coils[timer]!.energised
      ? { begin: off, end: on, first: on }
      : { begin: on, end: off, first: undefined };
  };

  it('an on-delay operates when its time is over, begins again when interrupted, and releases at once', () => {
    eachPanel('on-delay', [1, 2], (panel) => {
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
    eachPanel('off-delay', [1, 2], (panel) => {
      const { name, seconds } = timerOf(panel, 'off-delay', 'supplied-off-delay');
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

  /** IEC 61812-1 has off-delays with and without a supply of their own (from memory). */
  it('an off-delay that has a supply of its own releases at once without it, another runs its time out', () => {
    const kinds = new Set<string>();
    eachPanel('off-delay', [1, 2], (panel) => {
      const { name, kind, seconds } = timerOf(panel, 'off-delay', 'supplied-off-delay');
      const { begin, end, first } = signal(panel, name);
      const lost = [...(first ? [first] : []), begin, end, wait(0.3 * seconds)];
      const gone = panel.circuit.supplies.map(({ name: supply }) => ({ kind: 'fail', supply }) as const);
      expect(panel.after([...lost, ...gone]).operated(name)).toBe(kind === 'off-delay');
      kinds.add(kind);
    });
    expect([...kinds].sort()).toEqual(['off-delay', 'supplied-off-delay']);
  });
});

describe('two-hand control (ISO 13851, type III: within 0.5 s, both let go before it acts again)', () => {
  it('acts on two hands within half a second and not on two later ones', () => {
    eachPanel('two-hand', [1, 2, 4], (panel) => {
      const [one, other] = panel.all('push-button');
      expect(panel.after([press(one!), wait(0.3), press(other!)]).lamp(/ at rest$/)).toBe('dark');
      expect(panel.after([press(one!), wait(0.7), press(other!)]).lamp(/ at rest$/)).toBe('lit');
      expect(panel.after([press(one!)]).lamp(/ at rest$/)).toBe('lit');
    });
  });

  it('stops with either hand and wants both let go before it acts again', () => {
    eachPanel('two-hand', [1, 2, 4], (panel) => {
      const [one, other] = panel.all('push-button');
      const running = [press(one!), press(other!), wait(2)];
      expect(panel.after(running).lamp(/ at rest$/)).toBe('dark');
      const stopped = [...running, release(other!)];
      expect(panel.after(stopped).lamp(/ at rest$/)).toBe('lit');
      expect(panel.after([...stopped, press(other!)]).lamp(/ at rest$/)).toBe('lit');
      expect(panel.after([...stopped, release(one!), press(one!), press(other!)]).lamp(/ at rest$/)).toBe(
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
      motor: panel.one('motor', /^(?!Cooling fan)/),
      seconds: device.kind === 'on-delay' ? device.seconds : 0,
    };
  };

  it('starts in star, goes over to delta and never has both, at any moment of the run', () => {
    eachPanel('star-delta', [1, 2, 3, 4], (panel) => {
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
    for (const panel of panels(families.find(({ id }) => id === 'star-delta')!, 1, 3)) {
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
