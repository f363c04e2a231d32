/**
 * The circuits everyone is asked about, as the families make them, against what is published of them; what is only common
 * practice is in tests/practice-of-the-trade.
 */
import { describe, expect, it } from 'vitest';
import { actuated, eachPanel, type Panel, tap } from '../generator/reading.ts';

describe('two out of three: AB + BC + CA, its own dual', () => {
  it('trips on two of three and on no fewer, with plain and with broken signals', () => {
    eachPanel('two-out-of-three', [1, 2, 3], (panel) => {
      const sensors = panel.all('field-contact').concat(panel.all('limit-switch'), panel.all('float-switch'));
      expect(sensors).toHaveLength(3);
      for (let row = 0; row < 8; row++) {
        const on = sensors.filter((_, index) => (row >> index) & 1);
        const reading = panel.after(on.map((sensor) => actuated(panel, sensor).on));
        expect(reading.outcome).toBe('steady');
        expect(reading.lamp(/^No .* trip\b/)).toBe(on.length >= 2 ? 'dark' : 'lit');
      }
    });
  });
});

describe('alarm with acknowledge (ISA-18.1: flashing and sounding, steady and silent, off; one that clears first keeps flashing)', () => {
  it('goes through the sequence', () => {
    eachPanel('acknowledged-alarm', [1], (panel) => {
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
    eachPanel('acknowledged-alarm', [2], (panel) => {
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
