/** A sheet of a scene as SVG: plain shapes and texts, one small style sheet, no script, nothing from elsewhere. */
import { LETTER_SIZE } from '../layout/lettering.ts';
import { PALETTES, type Palette, type Theme } from '../palette.ts';
import { INKS, type InkStyle } from '../picture/inks.ts';
import { picturesOf } from '../picture/picture.ts';
import { round } from '../picture/shapes.ts';
import type { Ink, Lettering, Picture, Shape } from '../picture/types.ts';
import type { Scene, TextRole } from '../scene/types.ts';
import type { PictureState } from '../states/picture-state.ts';

export interface SvgOptions {
  readonly theme?: Theme;
  /** Colours of one's own, such as a page's custom properties. */
  readonly palette?: Palette;
  /** Millimetres for each unit, where the picture has a size on paper. */
  readonly millimetres?: number;
  /** Names the picture for who cannot see it. */
  readonly label?: string;
  /** Shows this state instead of the drawn one. */
  readonly state?: PictureState;
}

export const FONT = "Helvetica,Arial,'Liberation Sans',sans-serif";

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const NOT_XML = /[^\t\n\r\x20-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;
const PLAIN = /^[\x20-\x21\x23-\x25\x27-\x3b\x3d\x3f-\x7e]*$/;

export const escapeXml = (text: string): string =>
  PLAIN.test(text) ? text : text.replace(NOT_XML, '').replace(/[&<>"]/g, (char) => ENTITIES[char] ?? '');

/** Short names keep the file small. */
const INK_CLASS: Readonly<Record<Ink, string>> = {
  wire: '',
  symbol: '',
  blade: 'b',
  dashed: 'd',
  solid: 's',
  dot: 'k',
  frame: 'f',
  'frame-heavy': 'g',
  live: 'l',
  'live-symbol': 'm',
  'live-blade': 'v',
  'live-dot': 'j',
  fed: 'w',
  'fed-arrow': 'a',
  stop: 'o',
  'stop-bar': 'x',
  'on-lit': 'e',
  lit: 'i',
  ray: 'y',
};

const ROLE_CLASS: Readonly<Record<TextRole, string>> = {
  name: 'n',
  text: '',
  number: 'q',
  place: 'q',
  mark: 'q',
  rail: 'r',
  path: 'q',
  list: 'q',
  title: 'u',
};

function inkCss({ stroke, width, fill, dash }: InkStyle, palette: Palette): string {
  const rules = [
    `stroke:${stroke ? palette[stroke] : 'none'}`,
    ...(width ? [`stroke-width:${width}`] : []),
    `fill:${fill ? palette[fill] : 'none'}`,
    ...(dash ? [`stroke-dasharray:${dash.join(' ')}`] : []),
  ];
  return rules.join(';');
}

/** Only what the picture uses. */
function styleOf({ items }: Picture, palette: Palette): string {
  const inks = new Set<Ink>();
  let onLit = '';
  for (const item of items) {
    if (item.kind === 'shape') inks.add(item.ink);
    if (item.kind === 'group')
      for (const inner of item.items)
        if (inner.kind === 'shape') inks.add(inner.ink);
        else if (inner.onLit) onLit = `.h{fill:${palette.onLit}}`;
  }
  const classes = [...inks]
    .filter((ink) => INK_CLASS[ink])
    .map((ink) => `.${INK_CLASS[ink]}{${inkCss(INKS[ink], palette)}}`);
  const size = (role: TextRole): string => `font-size:${LETTER_SIZE[role]}px`;
  return [
    `text{font-family:${FONT};${size('text')};fill:${palette.ink}}`,
    `.n{font-weight:bold;${size('name')}}.u{font-weight:bold;${size('title')}}.q{fill:${palette.quiet}}.r{${size('rail')}}`,
    `path{${inkCss(INKS.wire, palette)};stroke-linecap:round;stroke-linejoin:round}`,
    ...classes,
    onLit,
  ].join('');
}

function shapeSvg({ ink, d, net }: Shape): string {
  const className = INK_CLASS[ink];
  const of = net === undefined ? '' : ` data-net="${net}"`;
  return `<path${className ? ` class="${className}"` : ''}${of} d="${d}"/>`;
}

function textSvg({ role, text, x, baseline, size, anchor, onLit }: Lettering): string {
  const className = onLit ? 'h' : ROLE_CLASS[role];
  const anchored = anchor === 'start' ? '' : ` text-anchor="${anchor}"`;
  const sized = size === LETTER_SIZE[role] ? '' : ` style="font-size:${size}px"`;
  return `<text${className ? ` class="${className}"` : ''} x="${round(x)}" y="${round(baseline)}"${anchored}${sized}>${escapeXml(text)}</text>`;
}

function itemsSvg(items: Picture['items'], end: string): string {
  let out = '';
  for (const item of items) {
    switch (item.kind) {
      case 'shape':
        out += shapeSvg(item) + end;
        break;
      case 'text':
        out += textSvg(item) + end;
        break;
      case 'group':
        out += `<g data-part="${escapeXml(item.part)}" transform="translate(${round(item.x)} ${round(item.y)})">${itemsSvg(item.items, '')}</g>${end}`;
    }
  }
  return out;
}

/** Sheet `index` of a scene, counted from 0. */
export function drawSvg(scene: Scene, index: number, options: SvgOptions = {}): string {
  return svgOf(picturesOf(scene, options.state).picture(index), options);
}

/** All sheets, one SVG each. */
export function drawSvgs(scene: Scene, options: SvgOptions = {}): string[] {
  const { picture } = picturesOf(scene, options.state);
  return scene.sheets.map((_, index) => svgOf(picture(index), options));
}

export function svgOf(picture: Picture, options: Omit<SvgOptions, 'state'>): string {
  const palette = options.palette ?? PALETTES[options.theme ?? 'light'];
  const { width, height } = picture;
  const mm = options.millimetres;
  const size = mm
    ? `width="${round(width * mm)}mm" height="${round(height * mm)}mm"`
    : `width="${width}" height="${height}"`;
  const label = options.label ? ` aria-label="${escapeXml(options.label)}"` : '';
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="0 0 ${width} ${height}" role="img"${label}>`,
    `<style>${styleOf(picture, palette)}</style>`,
    `<rect width="${width}" height="${height}" fill="${palette.paper}"/>`,
    `${itemsSvg(picture.items, '\n')}</svg>\n`,
  ].join('\n');
}
