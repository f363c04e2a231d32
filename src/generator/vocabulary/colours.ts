/**
 * Colours by what is shown or done. Lamps: IEC 60204-1, 10.3.2 (red emergency, yellow abnormal, green normal, blue mandatory
 * action, white neutral). Buttons: 10.2.1 (start white, grey, black, green allowed, never red; stop black, grey, white,
 * red allowed, never green; reset blue, white, grey, black; emergency stop red).
 */
import type { Colour } from '../../../shared/circuit.ts';

export type Meaning = 'emergency' | 'abnormal' | 'normal' | 'mandatory' | 'neutral';

export const LAMP_COLOURS: Readonly<Record<Meaning, readonly Colour[]>> = {
  emergency: ['red'],
  abnormal: ['yellow', 'amber'],
  normal: ['green'],
  mandatory: ['blue'],
  neutral: ['white'],
};

export type Purpose = 'start' | 'stop' | 'reset' | 'hold-to-run';

/**
 * Mostly what the standard prefers, white for start and black for stop, and no colour for both, so that a start is told from a stop
 * by its colour too. A button that acts only while it is held is white or grey (allowed there; black and green left out, common practice, no source).
 */
export const BUTTON_COLOURS: Readonly<Record<Purpose, readonly Colour[]>> = {
  start: ['white', 'white', 'white', 'green'],
  stop: ['black', 'black', 'black', 'red'],
  reset: ['blue', 'white', 'grey', 'black'],
  'hold-to-run': ['white', 'grey', 'grey'],
};
