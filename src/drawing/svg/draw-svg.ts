/** A sheet of a scene as SVG: plain shapes and texts, one small style sheet, no script, nothing from elsewhere. */
import { LETTER_SIZE } from '../layout/lettering.ts';
import { PALETTES, type Palette, type Theme } from '../palette.ts';
import { looksOf, poseOf } from '../scene/pose.ts';
import type { SceneSheet, SceneSymbol, SceneText, TextRole } from '../scene/types.ts';
import { type Stroke, symbolFor } from '../symbols/index.ts';
import { pathOf, round } from './shapes.ts';

export interface SvgOptions {
  readonly theme?: Theme;
  /** Colours of one's own, such as a page's custom properties. */
  readonly palette?: Palette;
  /** Millimetres for each unit, where the picture has a size on paper. */
  readonly millimetres?: number;
  /** Names the picture for who cannot see it. */
  readonly label?: string;
}

export const FONT = "Helvetica, Arial, 'Liberation Sans', sans-serif";

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const NOT_XML = /[^\t\n\r\x20-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

export const escapeXml = (text: string): string =>
  text.replace(NOT_XML, '').replace(/[&<>"]/g, (char) => ENTITIES[char] ?? '');

const CLASSES: Readonly<Record<TextRole, string>> = {
  name: 'n',
  text: 't',
  number: 'q',
  place: 'q',
  mark: 'q',
  rail: 'r',
  path: 'q',
  list: 'q',
  title: 'n',
};

function styleOf(palette: Palette): string {
  const font = (role: TextRole): string => `font-size:${LETTER_SIZE[role]}px`;
  return [
    `text{font-family:${FONT};${font('text')};fill:${palette.ink}}`,
    `.n{font-weight:bold;${font('name')}}`,
    `.q{fill:${palette.quiet}}`,
    `.r{${font('rail')}}`,
    `path{fill:none;stroke:${palette.ink};stroke-width:1.3;stroke-linecap:round;stroke-linejoin:round}`,
    `.b{stroke-width:2}`,
    `.d{stroke-width:1;stroke-dasharray:4 3}`,
    `.f{fill:${palette.ink}}`,
    `.k{stroke:none;fill:${palette.ink}}`,
    `.l{stroke:${palette.frame};stroke-width:1}`,
    `.h{stroke:${palette.frame};stroke-width:2}`,
  ].join('');
}

const element = (shape: string, className: string): string =>
  className ? `<path class="${className}" d="${shape}"/>` : `<path d="${shape}"/>`;

function letters(stroke: Extract<Stroke, { kind: 'letter' }>, x: number, y: number): string {
  const baseline = y + stroke.at[1] + stroke.size * 0.36;
  return `<text x="${round(x + stroke.at[0])}" y="${round(baseline)}" text-anchor="middle" font-size="${stroke.size}">${escapeXml(stroke.text)}</text>`;
}

function symbolSvg(symbol: SceneSymbol): string {
  const art = symbolFor(looksOf(symbol));
  const shapes = new Map<string, string>();
  const texts: string[] = [];
  for (const stroke of art.strokes(poseOf(symbol))) {
    if (stroke.kind === 'letter') {
      texts.push(letters(stroke, symbol.x, symbol.top));
      continue;
    }
    const className =
      stroke.kind === 'line' ? (stroke.blade ? 'b' : stroke.dashed ? 'd' : stroke.filled ? 'f' : '') : '';
    shapes.set(className, `${shapes.get(className) ?? ''}${pathOf(stroke, symbol.x, symbol.top)}`);
  }
  const drawn = [...shapes].map(([className, shape]) => element(shape, className)).join('');
  return `<g data-part="${escapeXml(symbol.id)}">${drawn}${texts.join('')}</g>`;
}

function wireSvg({ wires }: SceneSheet): string {
  const byNet = new Map<number, string>();
  for (const { net, x1, y1, x2, y2 } of wires) {
    const end = x1 === x2 ? `V${round(y2)}` : y1 === y2 ? `H${round(x2)}` : `L${round(x2)} ${round(y2)}`;
    byNet.set(net, `${byNet.get(net) ?? ''}M${round(x1)} ${round(y1)}${end}`);
  }
  return [...byNet].map(([net, shape]) => `<path data-net="${net}" d="${shape}"/>`).join('\n');
}

/** The arrow at the end of a conductor that goes on elsewhere. */
function markSvg({ marks }: SceneSheet): string {
  const shape = marks
    .filter(({ kind }) => kind === 'goes-on')
    .map(({ x, y, side }) => {
      const back = side === 'left' ? 5 : -5;
      return `M${round(x + back)} ${round(y - 3.5)}L${round(x)} ${round(y)}L${round(x + back)} ${round(y + 3.5)}`;
    })
    .join('');
  const rings = marks
    .filter(({ kind, side }) => kind === 'supply' && side === 'left')
    .map(({ x, y }) => pathOf({ kind: 'circle', at: [0, 0], r: 2.4 }, x, y))
    .join('');
  return `${shape ? element(shape, '') : ''}${rings ? element(rings, '') : ''}`;
}

/** Capitals are 0.718 of the em high in Helvetica: they stand in the middle of the text's box. */
const CAPITALS = 0.718;

function textSvg({ role, text, x, y, width, height, anchor, of }: SceneText): string {
  const at = anchor === 'start' ? x : anchor === 'end' ? x + width : x + width / 2;
  const baseline = y + height / 2 + (LETTER_SIZE[role] * CAPITALS) / 2;
  const anchored = anchor === 'start' ? '' : ` text-anchor="${anchor}"`;
  const owner = role === 'number' || role === 'name' ? ` data-of="${escapeXml(of)}"` : '';
  return `<text class="${CLASSES[role]}" x="${round(at)}" y="${round(baseline)}"${anchored}${owner}>${escapeXml(text)}</text>`;
}

export function drawSvg(sheet: SceneSheet, options: SvgOptions = {}): string {
  const palette = options.palette ?? PALETTES[options.theme ?? 'light'];
  const [width, height] = [Math.ceil(sheet.width), Math.ceil(sheet.height)];
  const mm = options.millimetres;
  const size = mm
    ? `width="${round(width * mm)}mm" height="${round(height * mm)}mm"`
    : `width="${width}" height="${height}"`;
  const label = options.label ? ` aria-label="${escapeXml(options.label)}"` : '';
  const lines = (heavy: boolean): string =>
    sheet.frame
      .filter((line) => line.heavy === heavy)
      .map(({ x1, y1, x2, y2 }) => `M${round(x1)} ${round(y1)}L${round(x2)} ${round(y2)}`)
      .join('');
  const dots = sheet.dots.map(({ x, y }) => pathOf({ kind: 'circle', at: [0, 0], r: 2.6 }, x, y)).join('');
  const links = sheet.links.map(({ x1, x2, y }) => `M${round(x1)} ${round(y)}H${round(x2)}`).join('');
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="0 0 ${width} ${height}" role="img"${label}>`,
    `<style>${styleOf(palette)}</style>`,
    `<rect width="${width}" height="${height}" fill="${palette.paper}"/>`,
    lines(true) && element(lines(true), 'h'),
    lines(false) && element(lines(false), 'l'),
    wireSvg(sheet),
    dots && element(dots, 'k'),
    links && element(links, 'd'),
    markSvg(sheet),
    ...sheet.symbols.map(symbolSvg),
    ...sheet.texts.map(textSvg),
    '</svg>\n',
  ]
    .filter(Boolean)
    .join('\n');
}
