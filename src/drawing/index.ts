export { drawText, type TextOptions } from './text/draw-text.ts';
