import { useEffect } from 'preact/hooks';
import { Board } from '../../parts/board.tsx';
import { Drawing } from '../../parts/drawing.tsx';
import type { Touchable } from '../../parts/touchable.ts';
import { meterShowing } from '../../question/asked-drawing.tsx';
import { fetchMarkParts, markParts } from '../../question/mark-parts.ts';
import { words } from '../../words.ts';
import type { Phase } from './session.ts';

/** The drawing as it stands in the end, and the run that leads there. */
export function Result({
  phase,
  about,
  marks,
}: {
  phase: Extract<Phase, { kind: 'marked' }>;
  about: readonly string[];
  marks: ReadonlyMap<string, Touchable>;
}) {
  const { drawn, mark } = phase.judgement;
  const { asked, task } = phase.prepared;
  const Parts = markParts.value;
  useEffect(fetchMarkParts, [phase.given]);
  const rightOf = (item: string) => mark.parts.find((part) => part.item === item)?.right;
  const meter = meterShowing(asked, rightOf);
  return Parts ? (
    <Parts.Player
      key={task.circuit}
      drawn={drawn}
      frames={phase.frames}
      about={about}
      marks={marks}
      {...meter}
    />
  ) : (
    <Board>
      <Drawing
        drawn={drawn}
        description={words('first').parts.drawing.inTheEnd}
        touchable={marks}
        {...meter}
      />
    </Board>
  );
}
