/** A grid of characters on which conductors meet properly: `├` where they join, a plain `│` where one crosses over. */

const UP = 1;
const RIGHT = 2;
const DOWN = 4;
const LEFT = 8;

const BOX: Readonly<Record<number, string>> = {
  [UP]: '╵',
  [RIGHT]: '╶',
  [DOWN]: '╷',
  [LEFT]: '╴',
  [UP | DOWN]: '│',
  [LEFT | RIGHT]: '─',
  [UP | RIGHT]: '└',
  [UP | LEFT]: '┘',
  [DOWN | RIGHT]: '┌',
  [DOWN | LEFT]: '┐',
  [UP | DOWN | RIGHT]: '├',
  [UP | DOWN | LEFT]: '┤',
  [LEFT | RIGHT | DOWN]: '┬',
  [LEFT | RIGHT | UP]: '┴',
  [UP | DOWN | LEFT | RIGHT]: '┼',
};

/** The same for conductors that have a voltage, drawn heavier. */
const HEAVY: Readonly<Record<string, string>> = Object.fromEntries(
  [...'╵╶╷╴│─└┘┌┐├┤┬┴┼'].map((light, at) => [light, [...'╹╺╻╸┃━┗┛┏┓┣┫┳┻╋'][at] as string]),
);

export const heavy = (char: string): string => HEAVY[char] ?? char;

/** What stands for a box character where there is only ASCII. */
const PLAIN: Readonly<Record<string, string>> = {
  '┌': '+',
  '┐': '+',
  '└': '+',
  '┘': '+',
  '┏': '+',
  '┓': '+',
  '┗': '+',
  '┛': '+',
  '│': '|',
  '╵': '|',
  '╷': '|',
  '─': '-',
  '╴': '-',
  '╶': '-',
  '╌': '-',
  '╲': '\\',
  '╱': '/',
  '╳': 'X',
  '○': 'o',
  '▯': '#',
  '×': 'x',
  '›': '>',
  '‹': '<',
  '┃': '#',
  '╹': '#',
  '╻': '#',
  '━': '=',
  '╸': '=',
  '╺': '=',
  '█': '#',
  '▄': 'o',
  '▞': '*',
};

const straight = (bits: number): boolean => bits === (UP | DOWN) || bits === (LEFT | RIGHT);

export class Canvas {
  private readonly width: number;
  private readonly height: number;
  /** By cell and conductor: which ways it leads. */
  private readonly wires = new Map<number, Map<number, number>>();
  private readonly chars = new Map<number, string>();
  /** Whether a conductor is drawn heavier. */
  private readonly isHeavy: (net: number) => boolean;

  constructor(width: number, height: number, isHeavy: (net: number) => boolean = () => false) {
    this.width = Math.ceil(width) + 1;
    this.height = Math.ceil(height) + 1;
    this.isHeavy = isHeavy;
  }

  private lead(x: number, y: number, net: number, bits: number): void {
    const key = y * this.width + x;
    const cell = this.wires.get(key) ?? new Map<number, number>();
    cell.set(net, (cell.get(net) ?? 0) | bits);
    this.wires.set(key, cell);
  }

  line(net: number, x1: number, y1: number, x2: number, y2: number): void {
    const [left, right] = [Math.min(x1, x2), Math.max(x1, x2)];
    const [top, bottom] = [Math.min(y1, y2), Math.max(y1, y2)];
    for (let x = left; x < right; x++) {
      this.lead(x, top, net, RIGHT);
      this.lead(x + 1, top, net, LEFT);
    }
    for (let y = top; y < bottom; y++) {
      this.lead(left, y, net, DOWN);
      this.lead(left, y + 1, net, UP);
    }
  }

  put(x: number, y: number, text: string): void {
    [...text].forEach((char, index) => {
      this.chars.set(y * this.width + x + index, char);
    });
  }

  private charAt(key: number): string {
    const written = this.chars.get(key);
    if (written !== undefined) return written;
    const cell = this.wires.get(key);
    if (!cell) return ' ';
    // Two conductors in one cell cross: the upright one is drawn through, the other broken.
    const through = [...cell].find(([, bits]) => cell.size === 1 || bits === (UP | DOWN));
    const [net = -1, bits = UP | DOWN] = through ?? [];
    const char = BOX[bits] ?? ' ';
    return this.isHeavy(net) ? heavy(char) : char;
  }

  /** Rows without trailing blanks. `ascii`: joints and corners are `+`, crossings `|`. */
  toText(ascii: boolean): string {
    const rows: string[] = [];
    for (let y = 0; y < this.height; y++) {
      let row = '';
      for (let x = 0; x < this.width; x++) {
        const char = this.charAt(y * this.width + x);
        row += ascii ? this.plain(char, y * this.width + x) : char;
      }
      rows.push(row.trimEnd());
    }
    while (rows[rows.length - 1] === '') rows.pop();
    return rows.join('\n');
  }

  private plain(char: string, key: number): string {
    const cell = this.wires.get(key);
    if (cell && !this.chars.has(key) && cell.size === 1) {
      const bits = [...cell.values()][0] ?? 0;
      if (!straight(bits) && PLAIN[char] === undefined) return '+';
    }
    return PLAIN[char] ?? (char.charCodeAt(0) > 126 ? '?' : char);
  }
}
