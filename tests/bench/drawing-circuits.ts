/** Circuits of a given number of relays, as plants have them: start and stop with seal-in, and lamps on changeovers. */
import type { Circuit, Device, Path, Step } from '../../shared/circuit.ts';

const hop = (device: string, enter: string, leave: string): Step => ({ device, enter, leave });
const at = (device: string, enter: string): Step => ({ device, enter });
const RATING = { volts: 24, current: 'AC' as const };

/** `relays` relays with about 3.3 contacts each; a new sheet after every `perSheet` of them. */
export function relayPanel(relays: number, perSheet: number): Circuit {
  const devices: Device[] = [];
  const paths: Path[] = [];
  const sheets = Math.ceil(relays / perSheet);
  for (let k = 1; k <= relays; k++) {
    const sheet = Math.ceil(k / perSheet);
    const [relay, start, stop, on, off, fuse] = [
      `-K${k}`,
      `-S${2 * k}`,
      `-S${2 * k + 1}`,
      `-H${2 * k}`,
      `-H${2 * k + 1}`,
      `-F${sheet}`,
    ];
    const first = (k - 1) % perSheet === 0;
    if (first) devices.push({ kind: 'fuse', name: fuse, poles: 1, amps: 4 });
    const before = `-K${k === 1 ? relays : k - 1}`;
    devices.push(
      { kind: 'relay', name: relay, text: `Tray ${k} watering`, poles: 4, rating: RATING },
      {
        kind: 'push-button',
        name: start,
        text: 'Start',
        contacts: [{ form: 'make', terminals: ['13', '14'] }],
      },
      {
        kind: 'push-button',
        name: stop,
        text: 'Stop',
        contacts: [{ form: 'break', terminals: ['21', '22'] }],
      },
      { kind: 'lamp', name: on, text: `Tray ${k} wet`, colour: 'green', rating: RATING },
      { kind: 'lamp', name: off, text: `Tray ${k} dry`, colour: 'white', rating: RATING },
    );
    paths.push(
      {
        sheet,
        steps: [
          ...(first ? [at('A', 'L'), hop(fuse, '1', '2')] : [at(fuse, '2')]),
          hop(stop, '21', '22'),
          hop(start, '13', '14'),
          hop(before, '31', '32'),
          hop(relay, 'A1', 'A2'),
          at('A', 'N'),
        ],
      },
      { sheet, steps: [at(stop, '22'), hop(relay, '11', '14'), at(start, '14')] },
      { sheet, steps: [at(fuse, '2'), hop(relay, '21', '24'), hop(on, 'X1', 'X2'), at('A', 'N')] },
      { sheet, steps: [at(relay, '21'), hop(relay, '21', '22'), hop(off, 'X1', 'X2'), at('A', 'N')] },
    );
  }
  return {
    title: 'Nursery watering',
    supplies: [{ name: 'A', volts: 24, current: 'AC', earthed: true }],
    devices,
    sheets: Array.from({ length: sheets }, (_, i) => ({
      number: i + 1,
      title: `Trays ${i * perSheet + 1} on`,
    })),
    paths,
  };
}

/** 12 relays, 40 contacts and 8 lamps on one sheet: chains with seal-ins, lamps on changeovers. */
export function twelveRelays(): Circuit {
  const devices: Device[] = [{ kind: 'fuse', name: '-F1', text: 'Control supply', poles: 1, amps: 4 }];
  const paths: Path[] = [];
  const feed = (first: boolean): Step[] => (first ? [at('A', 'L'), hop('-F1', '1', '2')] : [at('-F1', '2')]);
  for (let k = 1; k <= 12; k++) {
    const relay = `-K${k}`;
    devices.push({ kind: 'relay', name: relay, text: `Bed ${k} wanted`, poles: 4, rating: RATING });
    if (k % 3 === 1) {
      const button = `-S${k}`;
      devices.push({
        kind: 'push-button',
        name: button,
        text: `Water bed ${k}`,
        contacts: [{ form: 'make', terminals: ['13', '14'] }],
      });
      const other = `-K${k === 1 ? 12 : k - 1}`;
      paths.push(
        {
          sheet: 1,
          steps: [
            ...feed(k === 1),
            hop(other, '41', '42'),
            hop(button, '13', '14'),
            hop(relay, 'A1', 'A2'),
            at('A', 'N'),
          ],
        },
        { sheet: 1, steps: [at(other, '42'), hop(relay, '11', '14'), at(button, '14')] },
      );
    } else {
      paths.push({
        sheet: 1,
        steps: [
          ...feed(false),
          hop(`-K${k - 1}`, '21', '24'),
          hop(`-K${k - 1}`, '31', '32'),
          hop(relay, 'A1', 'A2'),
          at('A', 'N'),
        ],
      });
    }
    if (k <= 4) {
      const [on, off] = [`-H${2 * k - 1}`, `-H${2 * k}`];
      devices.push(
        { kind: 'lamp', name: on, text: `Bed ${k} wet`, colour: 'green', rating: RATING },
        { kind: 'lamp', name: off, text: `Bed ${k} dry`, colour: 'white', rating: RATING },
      );
      const pole = k % 3 === 1 ? ['41', '42', '44'] : ['11', '12', '14'];
      const [common, rest, operated] = pole as [string, string, string];
      const spare = `-K${13 - k}`;
      paths.push(
        {
          sheet: 1,
          steps: [
            ...feed(false),
            hop(spare, '11', '14'),
            hop(relay, common, operated),
            hop(on, 'X1', 'X2'),
            at('A', 'N'),
          ],
        },
        {
          sheet: 1,
          steps: [at(relay, common), hop(relay, common, rest), hop(off, 'X1', 'X2'), at('A', 'N')],
        },
      );
    }
  }
  return {
    title: 'Beds to water',
    supplies: [{ name: 'A', volts: 24, current: 'AC', earthed: true }],
    devices,
    sheets: [],
    paths,
  };
}
