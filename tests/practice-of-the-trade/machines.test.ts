/** Machines started, moved and kept apart, as the families make them. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { actuated, close, eachPanel, open, type Panel, press, tap } from '../generator/reading.ts';

describe('jog', () => {
  it('runs only while it is held', () => {
    eachPanel('jog', [2, 3, 5], (panel) => {
      for (const button of panel.all('push-button', /^Jog/)) {
        expect(panel.after([press(button)]).lamp(/stopped$/)).toBe('dark');
        const let_go = panel.after(tap(button));
        expect(let_go.outcome).toBe('steady');
        expect(let_go.lamp(/stopped$/)).toBe('lit');
      }
    });
  });

  it('with the plain break contact of the jog button the seal may catch on a fast let-go: a race', () => {
    eachPanel('jog', [1], (panel) => {
      const button = panel.one('push-button', /^Jog/);
      expect(panel.after([press(button)]).outcome).toBe('steady');
      expect(panel.after(tap(button)).outcome).toBe('race');
    });
  });
});

describe('pump-out between two floats', () => {
  it('starts at the high float, stops at the low one, and between them holds what it was', () => {
    eachPanel('pump-out', [1, 3, 5], (panel) => {
      const low = panel.one('float-switch', /low level$/);
      const high = panel.one('float-switch', /high level$/);
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

describe('interlocked directions', () => {
  const coils = (panel: Panel) => panel.all('relay').concat(panel.all('contactor'));

  it('lets the first one win', () => {
    eachPanel('interlocked', [1, 2, 3], (panel) => {
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
    eachPanel('interlocked', [1, 2, 3], (panel) => {
      const [feed] = panel.all('breaker', /^Control/).concat(panel.all('fuse', /^Control/));
      const buttons = panel.all('push-button').filter((name) => !/^Stop/.test(panel.device(name).text!));
      const { outcome } = panel.after([open(feed!), ...buttons.map(press), close(feed!)]);
      expect(outcome).toBe('race');
    });
  });
});

describe('duty and standby on a latching relay', () => {
  it('keeps its position without supply and through its return', () => {
    eachPanel('duty-standby', [1, 3, 5], (panel) => {
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
    eachPanel('duty-standby', [4, 5], (panel) => {
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
