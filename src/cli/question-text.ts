import type { Circuit } from '../../shared/circuit.ts';
import type { Asked } from '../../shared/question.ts';
import { drawText } from '../drawing/index.ts';
import type { Words } from '../words/index.ts';
import type { Io } from './io.ts';
import { asciiOnly, styleFor, wrapText } from './style.ts';

type Screen = Pick<Io, 'colour' | 'columns' | 'environment' | 'rows' | 'words'>;

/** Narrower than this nobody reads a text beside a drawing. */
const NARROWEST = 28;
/** Columns between a drawing and the words beside it. */
const BETWEEN = 3;

/** What is said about the drawing, in no more than so many columns. */
function saidOf(asked: Asked, screen: Screen, columns: number, roomy: boolean): string[] {
  const { question: said } = screen.words;
  const style = styleFor(screen);
  const wrapped = (text: string, indent = ''): string => wrapText(`${indent}${text}`, columns, indent);
  const width = Math.max(...asked.items.map(({ label }) => label.length));
  const gap = roomy ? [''] : [];
  return [
    ...(roomy ? asked.situation : [asked.situation.join(' ')]).map((sentence) => wrapped(sentence)),
    ...gap,
    ...asked.cautions.map((caution) => style.quiet(wrapped(said.caution(caution)))),
    style.strong(wrapped(asked.task)),
    ...asked.items.map(({ label, choices, unit }) =>
      wrapped(
        `${label.padEnd(width)}  ${choices.length > 0 ? said.choices(choices) : unit === 'V' ? said.inVolts : ''}`.trimEnd(),
        '  ',
      ),
    ),
    ...gap,
    style.quiet(wrapped(asked.how)),
  ].flatMap((text) => text.split('\n'));
}

function beside(drawing: readonly string[], asked: Asked, screen: Screen): string[] | undefined {
  const width = Math.max(...drawing.map((line) => line.length)) + BETWEEN;
  if (screen.columns - width < NARROWEST) return undefined;
  const said = saidOf(asked, screen, screen.columns - width, false);
  return Array.from({ length: Math.max(drawing.length, said.length) }, (_, at) =>
    `${(drawing[at] ?? '').padEnd(width)}${said[at] ?? ''}`.trimEnd(),
  );
}

/**
 * A question as it is read in a terminal: the drawing at rest, what is done, and what to answer. All of it is to be seen
 * at once: where the terminal has few rows it stands closer, and the words beside the drawing.
 */
export function questionText(
  core: Pick<Words, 'drawing' | 'lettering'>,
  circuit: Circuit,
  asked: Asked,
  screen: Screen,
  heading = '',
): string {
  const { columns, rows = Number.POSITIVE_INFINITY } = screen;
  const title = circuit.title ? [styleFor(screen).strong(circuit.title)] : [];
  const drawnIn = (width: number): string[] =>
    drawText(core, circuit, { columns: width, ascii: asciiOnly(screen) }).split('\n');
  const drawing = drawnIn(columns);
  const line = heading ? [styleFor(screen).quiet('─'.repeat(Math.min(columns, 72)))] : [];
  const head = heading ? [heading] : [];
  const gapped = (lines: readonly string[]): readonly string[] => (lines.length > 0 ? [...lines, ''] : []);
  const roomy = [
    ...line,
    ...gapped(head),
    ...gapped(title),
    ...drawing,
    '',
    ...saidOf(asked, screen, columns, true),
  ];
  const close = [...head, ...title, ...drawing, ...saidOf(asked, screen, columns, false)];
  // Where there is room a drawing takes it; narrower it may leave some for the words.
  const sides = [drawing, drawnIn(columns - NARROWEST - BETWEEN)].flatMap((each) => {
    const side = beside(each, asked, screen);
    return side ? [[...head, ...title, ...side]] : [];
  });
  const ways = [roomy, close, ...sides];
  // The prompt has a row too. Where nothing holds it, the drawing and the question scroll least in the shortest.
  const shown =
    ways.find((lines) => lines.length < rows) ??
    ways.reduce((one, other) => (other.length < one.length ? other : one));
  return shown.join('\n');
}
