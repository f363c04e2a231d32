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

/** A button that acts only while it is held has the start colours, green left out (common practice, no source). */
export const BUTTON_COLOURS: Readonly<Record<Purpose, readonly Colour[]>> = {
  start: ['white', 'grey', 'black', 'green'],
  stop: ['black', 'grey', 'white', 'red'],
  reset: ['blue', 'white', 'grey', 'black'],
  'hold-to-run': ['white', 'grey', 'black'],
};
