import { useMemo } from 'preact/hooks';
import type { Drawn, Sheet, Spot } from '../engine/messages.ts';

/** What can be touched on a drawing, by item: its name, the state it is given, and how that was marked. */
export interface Touchable {
  readonly label: string;
  readonly state: string | undefined;
  readonly mark?: 'right' | 'wrong';
}

interface Props {
  readonly drawn: Drawn;
  /** What the drawing shows, for who cannot see it. */
  readonly description: string;
  readonly touchable?: ReadonlyMap<string, Touchable>;
  readonly onTouch?: (item: string) => void;
  readonly disabled?: boolean;
  /** Devices and terminals to point at. */
  readonly about?: readonly string[];
}

const percent = (share: number): string => `${(100 * share).toFixed(3)}%`;

/** A place by its middle, so that a target larger than the symbol stays centred on it. */
const middle = ({ x, y, width, height }: Spot) => ({
  left: percent(x + width / 2),
  top: percent(y + height / 2),
  width: percent(width),
  height: percent(height),
});

function SpotButton({
  spot,
  touch,
  disabled,
  onTouch,
}: {
  spot: Spot;
  touch: Touchable;
  disabled: boolean;
  onTouch: (item: string) => void;
}) {
  const state = touch.state ?? 'not answered';
  return (
    <button
      type="button"
      class={`spot ${spot.kind} ${touch.mark ?? ''}`}
      data-state={touch.state}
      disabled={disabled}
      style={middle(spot)}
      aria-label={`${touch.label}: ${state}`}
      onClick={() => onTouch(spot.item)}
    >
      <span class="state">{touch.state ?? '?'}</span>
    </button>
  );
}

function SheetView({
  sheet,
  description,
  touchable,
  onTouch,
  disabled,
  about,
}: { sheet: Sheet } & Omit<Props, 'drawn'>) {
  // As a picture of its own, the drawing's style can't reach the page and the page's policy needs no exception.
  const source = useMemo(() => `data:image/svg+xml,${encodeURIComponent(sheet.svg)}`, [sheet.svg]);
  const spots = sheet.spots.filter(({ item }) => touchable?.has(item));
  const pointed = about ? sheet.spots.filter(({ item }) => about.includes(item)) : [];
  return (
    <figure class="sheet">
      {sheet.title && <figcaption>{sheet.title}</figcaption>}
      <div
        class="lines"
        style={{ width: `${sheet.width}px`, aspectRatio: `${sheet.width} / ${sheet.height}` }}
      >
        <img src={source} alt={description} width={sheet.width} height={sheet.height} />
        {pointed.map((spot, index) => (
          <span key={`${spot.item} ${index}`} class="pointed" style={middle(spot)} />
        ))}
        {touchable &&
          spots.map((spot, index) => (
            <SpotButton
              key={`${spot.item} ${index}`}
              spot={spot}
              touch={touchable.get(spot.item)!}
              disabled={disabled ?? false}
              onTouch={onTouch ?? (() => undefined)}
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
