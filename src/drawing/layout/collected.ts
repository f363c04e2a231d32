/** What one row of columns puts on the sheet, while it is drawn and until it has its place there. */
import type { Dot, Link, Mark, ScenePort, SceneSymbol, SceneText, TextRole, Wire } from '../scene/types.ts';
import type { Label } from './labels.ts';
import type { Profile } from './profile.ts';

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

export class Collected {
  width = 0;
  height = 0;
  readonly symbols: (Mutable<Omit<SceneSymbol, 'ports'>> & {
    readonly ports: readonly Mutable<ScenePort>[];
  })[] = [];
  readonly wires: Mutable<Wire>[] = [];
  readonly dots: Mutable<Dot>[] = [];
  readonly marks: Mutable<Mark>[] = [];
  readonly links: Mutable<Link>[] = [];
  readonly texts: Mutable<SceneText>[] = [];
  private readonly profile: Profile;

  constructor(profile: Profile) {
    this.profile = profile;
  }

  text(
    role: TextRole,
    text: string,
    x: number,
    y: number,
    anchor: SceneText['anchor'],
    of: string,
    width = this.profile.measure(text, role),
  ): void {
    const { profile } = this;
    const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
    this.texts.push({
      role,
      text,
      x: profile.cell ? Math.round(left) : left,
      y,
      width,
      height: profile.lineHeight(role),
      anchor,
      of,
    });
  }

  lines({ lines }: Label, x: number, from: number, anchor: SceneText['anchor'], of: string): void {
    let y = from;
    for (const { text, role, width } of lines) {
      this.text(role, text, x, y, anchor, of, width);
      y += this.profile.lineHeight(role);
    }
  }

  wire(net: number, x1: number, y1: number, x2: number, y2: number): void {
    if (x1 !== x2 || y1 !== y2) this.wires.push({ net, x1, y1, x2, y2 });
  }

  dot(net: number, x: number, y: number): void {
    this.dots.push({ net, x, y });
  }

  /** Puts another drawing to the right of this one. */
  takeBeside(other: Collected): void {
    const from = this.width + this.profile.gap;
    other.shift(from, 0);
    this.symbols.push(...other.symbols);
    this.wires.push(...other.wires);
    this.dots.push(...other.dots);
    this.marks.push(...other.marks);
    this.links.push(...other.links);
    this.texts.push(...other.texts);
    this.width = from + other.width;
    this.height = Math.max(this.height, other.height);
  }

  /** Puts the whole where it belongs on its sheet. */
  shift(dx: number, dy: number): void {
    for (const symbol of this.symbols) {
      symbol.x += dx;
      symbol.left += dx;
      symbol.right += dx;
      symbol.top += dy;
      symbol.bottom += dy;
      for (const port of symbol.ports) {
        port.x += dx;
        port.y += dy;
      }
    }
    for (const wire of this.wires) {
      wire.x1 += dx;
      wire.x2 += dx;
      wire.y1 += dy;
      wire.y2 += dy;
    }
    for (const link of this.links) {
      link.x1 += dx;
      link.x2 += dx;
      link.y += dy;
    }
    for (const list of [this.dots, this.marks, this.texts])
      for (const item of list) {
        item.x += dx;
        item.y += dy;
      }
  }
}
