/** Ink and paper, and the few colours that say something; each is also said by line weight and by a mark. */
export type Theme = 'light' | 'dark';

export interface Palette {
  readonly paper: string;
  readonly ink: string;
  /** Terminal numbers, places, lists. */
  readonly quiet: string;
  /** Frame and title block. */
  readonly frame: string;
  /** An energised conductor. */
  readonly live: string;
  /** The current path that feeds the load asked about: its arrows, and the broad line under it. */
  readonly fed: string;
  readonly halo: string;
  /** The open contact that stops it. */
  readonly stop: string;
  /** The inside of a lit lamp, and of an energised coil. */
  readonly lit: string;
  /** What is drawn and written on it. */
  readonly onLit: string;
}

/**
 * Blue against vermilion and yellow: the pairs that stay apart in protanopia, deuteranopia and tritanopia (Okabe and Ito
 * 2008, Color Universal Design: blue and vermilion; from memory), with lightness far enough apart for grey printing.
 */
export const PALETTES: Readonly<Record<Theme, Palette>> = {
  light: {
    paper: '#fdfdfa',
    ink: '#1c2026',
    quiet: '#474d57',
    frame: '#6b717b',
    live: '#0b62a8',
    fed: '#063d6e',
    halo: '#bcd9f3',
    stop: '#c2410c',
    lit: '#ffd23d',
    onLit: '#1c2026',
  },
  dark: {
    paper: '#15181d',
    ink: '#e9e7e0',
    quiet: '#b9bcc2',
    frame: '#7d848f',
    live: '#63b3f2',
    fed: '#d3e9fd',
    halo: '#29507a',
    stop: '#ff8a50',
    lit: '#e0ab1f',
    onLit: '#0e1013',
  },
};
