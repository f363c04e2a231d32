import { useMemo } from 'preact/hooks';
import type { Drawn, Sheet, Spot } from '../engine/messages.ts';

/** What can be touched on a drawing, by item: its name, the state it is given, and how that was marked. */
export interface Touchable {
  readonly label: string;
  readonly state: string | undefined;
  readonly mark?: { readonly correct: boolean; readonly right: string };
}

interface Props {
  readonly drawn: Drawn;
  /** What the drawing shows, for who cannot see it. */
  readonly description: string;
  readonly touchable?: ReadonlyMap<string, Touchable>;
  readonly onTouch?: (item: string) => void;
  /** Devices and terminals to point at. */
  readonly about?: readonly string[];
}

const percent = (share: number): string => `${(100 * share).toFixed(3)}%`;

/** The middle of a place, and its size. */
const boxed = ({ x, y, width, height }: Spot) => ({
  left: percent(x + width / 2),
  top: percent(y + height / 2),
  width: percent(width),
  height: percent(height),
});

/** Round what is drawn of a symbol, without its leads, in the drawing's pixels: a ring's width, height, and clearance to its tag. */
const RINGS: Readonly<Record<Spot['kind'], readonly [number, number, number]>> = {
  load: [28, 28, 3],
  coil: [36, 24, 3],
  input: [38, 24, 3],
  contact: [30, 30, 3],
  terminal: [11, 11, 20],
};

/** Where a target stands and how large its ring is; it grows with the drawing. */
function placed(spot: Spot, sheet: Sheet): Record<string, string> {
  const [across, high, clear] = RINGS[spot.kind];
  const share = (pixels: number): string => `${((100 * pixels) / sheet.width).toFixed(3)}cqw`;
  return {
    left: percent(spot.x + spot.width / 2),
    top: percent(spot.y + spot.height / 2),
    '--across': share(across),
    '--high': share(high),
    '--tag': share(across / 2 + clear),
    '--letters': share(11.5),
  };
}

function SpotButton({
  spot,
  sheet,
  touch,
  onTouch,
}: {
  spot: Spot;
  sheet: Sheet;
  touch: Touchable;
  onTouch: ((item: string) => void) | undefined;
}) {
  const inside = (
    <>
      <span class="ring" />
      <span class="tag">{touch.state ?? '?'}</span>
    </>
  );
  const shared = { 'data-state': touch.state, style: placed(spot, sheet) };
  if (touch.mark) {
    const { correct, right } = touch.mark;
    return (
      <span class={`spot ${spot.kind} ${correct ? 'right' : 'wrong'}`} {...shared} aria-hidden="true">
        <span class="ring" />
        <span class="tag">{correct ? `✓ ${right}` : `✗ ${right}`}</span>
      </span>
    );
  }
  return (
    <button
      type="button"
      class={`spot ${spot.kind}`}
      {...shared}
      aria-label={`${touch.label}: ${touch.state ?? 'not answered'}`}
      onClick={() => onTouch?.(spot.item)}
    >
      {inside}
    </button>
  );
}

function SheetView({
  sheet,
  description,
  touchable,
  onTouch,
  about,
}: { sheet: Sheet } & Omit<Props, 'drawn'>) {
  // As a picture of its own, the drawing's style can't reach the page and the page's policy needs no exception.
  const source = useMemo(() => `data:image/svg+xml,${encodeURIComponent(sheet.svg)}`, [sheet.svg]);
  const spots = sheet.spots.filter(({ item }) => touchable?.has(item));
  const pointed = about ? sheet.spots.filter(({ item }) => about.includes(item)) : [];
  return (
    <figure class="sheet" style={{ '--w': sheet.width, '--ratio': sheet.width / sheet.height }}>
      {sheet.title && <figcaption>{sheet.title}</figcaption>}
      <div class="lines" style={{ aspectRatio: `${sheet.width} / ${sheet.height}` }}>
        <img src={source} alt={description} width={sheet.width} height={sheet.height} />
        {pointed.map((spot, index) => (
          <span key={`${spot.item} ${index}`} class="pointed" style={boxed(spot)} />
        ))}
        {touchable &&
          spots.map((spot, index) => (
            <SpotButton
              key={`${spot.item} ${index}`}
              spot={spot}
              sheet={sheet}
              touch={touchable.get(spot.item)!}
              onTouch={onTouch}
            />
          ))}
      </div>
    </figure>
  );
}

/** A drawing with what can be touched laid over it as real buttons. */
export function Drawing({ drawn, ...rest }: Props) {
  return (
    <div class="drawing">
      {drawn.sheets.map((sheet, index) => (
        <SheetView key={`${index} ${sheet.title}`} sheet={sheet} {...rest} />
      ))}
    </div>
  );
}
