import type { VNode } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Drawn, Sheet, Spot } from '../engine/messages.ts';
import { words } from '../words.ts';
import type { LaidOn } from './conductors.ts';
import { fetchLaying, laying } from './laying.ts';
import { edgeOf, percent, placed } from './placed.ts';
import type { Touchable } from './touchable.ts';

interface Props {
  readonly drawn: Drawn;
  /** What the drawing shows, for who cannot see it. */
  readonly description: string;
  readonly touchable?: ReadonlyMap<string, Touchable>;
  readonly onTouch?: (item: string) => void;
  /** By sheet: the places to touch, where they are others than the drawing's own. */
  readonly points?: readonly (readonly Spot[])[];
  /** What the meter on the drawing shows. */
  readonly meter?: string;
  /** Conductors laid from terminal to terminal by whoever answers. */
  readonly conductors?: readonly (readonly [string, string])[];
  /** Terminals that their conductor is off. */
  readonly broken?: readonly string[];
  /** Devices and terminals to point at. */
  readonly about?: readonly string[];
  /** Places that are asked about and can't be answered on the drawing. */
  readonly asked?: readonly string[];
}

/** The middle of a place, and its size. */
const boxed = ({ x, y, width, height }: Spot) => ({
  left: percent(x + width / 2),
  top: percent(y + height / 2),
  width: percent(width),
  height: percent(height),
});

/** A longer word than this stands under its symbol: beside it, it would cover the next one's name. */
const LONG = 4;

function SpotButton({
  spot,
  sheet,
  touch,
  sign,
  onTouch,
}: {
  spot: Spot;
  sheet: Sheet;
  touch: Touchable;
  /** Stands there for the state that it is given. */
  sign: string | undefined;
  onTouch: ((item: string) => void) | undefined;
}) {
  const edge = edgeOf(spot);
  const verdict = touch.mark && (touch.mark.correct ? 'right' : 'wrong');
  const shown = touch.shown ?? touch.state;
  const shared = {
    class: `spot ${spot.kind} ${edge} ${verdict ?? ''}`,
    'data-state': verdict ? undefined : touch.state,
    'data-long': !verdict && shown !== undefined && shown.length > LONG ? '' : undefined,
    style: placed(spot, sheet),
  };
  // What was answered and what is right stand beside the drawing in words.
  if (verdict)
    return (
      <span {...shared} aria-hidden="true">
        <span class="ring" />
        <span class="tag">{verdict === 'right' ? '✓' : '✗'}</span>
      </span>
    );
  const { given } = words('first').parts.drawing;
  const { label } = touch;
  return (
    <button
      type="button"
      {...shared}
      aria-label={shown === undefined ? label : given({ label, state: sign ?? shown })}
      onClick={() => onTouch?.(spot.item)}
    >
      <span class="ring" />
      <span class="tag">{sign ?? shown ?? '?'}</span>
    </button>
  );
}

/** The symbols to point at: of a device whose terminals are named, those that have one of them; otherwise all. */
function pointedAt(spots: readonly Spot[], about: readonly string[]): Spot[] {
  const deviceOf = (item: string): string => item.split(':')[0]!;
  const narrowed = new Set(about.filter((item) => item.includes(':')).map(deviceOf));
  const found: Spot[] = [];
  let symbol: Spot | undefined;
  for (const spot of spots) {
    // A symbol stands before its terminals.
    if (spot.kind !== 'terminal') symbol = spot;
    const wanted =
      spot.kind === 'terminal'
        ? about.includes(spot.item)
        : about.includes(spot.item) && !narrowed.has(deviceOf(spot.item));
    if (wanted && symbol && !found.includes(symbol)) found.push(symbol);
  }
  return found;
}

/** What can be touched, as real buttons. */
function Targets({
  spots,
  sheet,
  touchable,
  laid,
  onTouch,
}: {
  spots: readonly Spot[];
  sheet: Sheet;
  touchable: ReadonlyMap<string, Touchable>;
  laid: LaidOn | undefined;
  onTouch: ((item: string) => void) | undefined;
}) {
  const reached = spots.filter(({ item, kind }) => {
    const touch = touchable.get(item);
    return touch && (!touch.at || touch.at.includes(kind));
  });
  return (
    <>
      {reached.map((spot, index) => (
        <SpotButton
          key={`${spot.item} ${index}`}
          spot={spot}
          sheet={sheet}
          touch={touchable.get(spot.item)!}
          sign={laid?.ends.find((end) => end.spot.item === spot.item)?.sign}
          onTouch={onTouch}
        />
      ))}
    </>
  );
}

function SheetView({
  sheet,
  widest,
  description,
  touchable,
  onTouch,
  about,
  asked,
  points,
  meter,
  laid,
  broken = [],
}: { sheet: Sheet; widest: number; points: readonly Spot[] | undefined; laid: LaidOn | undefined } & Omit<
  Props,
  'drawn' | 'points' | 'conductors'
>) {
  const Laying = laying.value;
  // As a picture of its own, the drawing's style can't reach the page and the page's policy needs no exception.
  const source = useMemo(() => `data:image/svg+xml,${encodeURIComponent(sheet.svg)}`, [sheet.svg]);
  const pointed = about ? pointedAt(sheet.spots, about) : [];
  const marks = (at: (spot: Spot) => boolean | undefined, how: string, what: VNode) =>
    sheet.spots.filter(at).map((spot, index) => (
      <span
        key={`${spot.item} ${index}`}
        class={`spot ${spot.kind} ${how}`}
        style={placed(spot, sheet)}
        aria-hidden="true"
      >
        {what}
      </span>
    ));
  return (
    <figure class="sheet" style={{ width: percent(sheet.width / widest) }}>
      {sheet.title && <figcaption>{sheet.title}</figcaption>}
      <div class="lines" style={{ aspectRatio: `${sheet.width} / ${sheet.height}` }}>
        <img src={source} alt={description} width={sheet.width} height={sheet.height} />
        {pointed.map((spot, index) => (
          <span key={`${spot.item} ${index}`} class="pointed" style={boxed(spot)} />
        ))}
        {marks(
          ({ item, kind }) => asked?.includes(item) && kind !== 'contact',
          'shown',
          <span class="ring" />,
        )}
        {Laying && laid && (
          <Laying.Laid
            sheet={sheet}
            reading={meter}
            laid={laid}
            isTouched={(item) => touchable?.has(item) === true}
          />
        )}
        {marks(({ item }) => broken.includes(item), 'broken', <span class="tag">✕</span>)}
        {touchable && (
          <Targets
            spots={points ?? sheet.spots}
            sheet={sheet}
            touchable={touchable}
            laid={laid}
            onTouch={onTouch}
          />
        )}
      </div>
    </figure>
  );
}

/** Scrolls the board, and nothing else, to the first place that is pointed at, where it is out of sight. */
function show(drawing: HTMLElement): void {
  const board = drawing.closest('.board');
  const place = drawing.querySelector('.pointed')?.getBoundingClientRect();
  if (!board || !place) return;
  const seen = board.getBoundingClientRect();
  if (place.top < seen.top || place.bottom > seen.bottom)
    board.scrollTop += (place.top + place.bottom - seen.top - seen.bottom) / 2;
  if (place.left < seen.left || place.right > seen.right)
    board.scrollLeft += (place.left + place.right - seen.left - seen.right) / 2;
}

/** A drawing with what can be touched laid over it as real buttons. Its sheets are all drawn to one scale. */
export function Drawing({ drawn, points, conductors = [], ...rest }: Props) {
  const widest = Math.max(...drawn.sheets.map(({ width }) => width));
  const highest = Math.max(...drawn.sheets.map(({ height }) => height));
  const wanted = conductors.length > 0 || drawn.sheets.some(({ meter }) => meter !== undefined);
  useEffect(() => {
    if (wanted) fetchLaying();
  }, [wanted]);
  const laid = wanted ? laying.value?.laidOn(drawn.sheets, conductors) : undefined;
  const root = useRef<HTMLDivElement>(null);
  const { about } = rest;
  useEffect(() => {
    if (about && about.length > 0 && root.current) show(root.current);
  }, [about]);
  return (
    <div ref={root} class="drawing" style={{ '--w': widest, '--ratio': widest / highest }}>
      {drawn.sheets.map((sheet, index) => (
        <SheetView
          key={`${index} ${sheet.title}`}
          sheet={sheet}
          widest={widest}
          points={points?.[index]}
          laid={laid?.[index]}
          {...rest}
        />
      ))}
    </div>
  );
}
