/** The writer of the notation. */
import type { Circuit, Device, Rating, Sheet, Supply } from '../../../shared/circuit.ts';
import { stepText } from '../terminal-names.ts';
import { SUPPLY_GRAMMAR } from './grammar.ts';
import { GRAMMARS } from './grammars.ts';
import { quote } from './line-words.ts';
import type { Option } from './options.ts';
import { AS_FOUND, titleLine } from './title.ts';
import { hasRating } from './words.ts';

type Values = Readonly<Record<string, unknown>>;

/**
 * The circuit in canonical form: reading it gives the same circuit again, and two texts of the same circuit are written
 * alike. What a line may leave out is left out.
 */
export function writeCircuit(circuit: Circuit): string {
  const { title, asFound, supplies, devices } = circuit;
  const rating = defaultRating(supplies);
  const width = Math.max(0, ...devices.map(({ name }) => name.length));
  const blocks = [
    [
      ...(title === undefined ? [] : [titleLine(title)]),
      ...(asFound ? [AS_FOUND] : []),
      ...supplies.map(supplyLine),
      ...devices.map((device) => deviceLine(device, width, rating)),
    ],
    pathLines(circuit),
  ];
  return blocks
    .filter((block) => block.length > 0)
    .map((block) => `${block.join('\n')}\n`)
    .join('\n');
}

/** What a rating left out is taken from: the first supply that isn't three-phase. */
function defaultRating(supplies: readonly Supply[]): Rating | undefined {
  for (const { volts, current } of supplies) if (current !== '3AC') return { volts, current };
  return undefined;
}

const optionWords = (options: readonly Option[], values: Values): string[] =>
  options.map((option) => option.write(values)).filter((words) => words !== '');

const supplyLine = (supply: Supply): string =>
  ['supply', supply.name, ...optionWords(SUPPLY_GRAMMAR.options, supply)].join(' ');

function deviceLine(device: Device, width: number, usual: Rating | undefined): string {
  return `${device.name.padEnd(width)}  ${deviceWords(device, usual)}`;
}

/** A device's line without its designation: `relay 2 poles 24 V DC`. */
function deviceWords(device: Device, usual: Rating | undefined): string {
  const { volts, current } = ('rating' in device && device.rating) || {};
  const asUsual = hasRating(device.kind) && volts === usual?.volts && current === usual?.current;
  const values: Values = asUsual ? { ...device, rating: undefined } : device;
  return [device.kind, ...optionWords(GRAMMARS[device.kind].options, values)].join(' ');
}

const sheetLine = ({ number, title }: Sheet): string =>
  title === undefined ? `sheet ${number}` : `sheet ${number} ${quote(title)}`;

/** Paths in their order. A sheet is named before its first path, in the order of the list, and again to go back to it. */
function pathLines({ sheets, paths }: Circuit): string[] {
  const lines: string[] = [];
  let named = 0;
  let current = 0;
  const name = () => {
    const next = sheets[named]!;
    lines.push(sheetLine(next));
    named += 1;
    current = next.number;
  };
  // Paths before any sheet line are on sheet 1.
  const [first] = sheets;
  if (first?.number === 1 && first.title === undefined && paths[0]?.sheet === 1) {
    named = 1;
    current = 1;
  }
  for (const { sheet, steps } of paths) {
    if (sheets.findIndex(({ number }) => number === sheet) >= named) {
      while (current !== sheet) name();
    } else if (current !== sheet) {
      lines.push(`sheet ${sheet}`);
      current = sheet;
    }
    lines.push(steps.map(stepText).join('  '));
  }
  while (named < sheets.length) name();
  return lines;
}
