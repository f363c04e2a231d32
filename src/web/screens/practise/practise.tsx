import { useEffect, useMemo, useRef } from 'preact/hooks';
import { fetchLaying } from '../../parts/laying.ts';
import { fetchMarkParts } from '../../question/mark-parts.ts';
import { partMissing } from '../../renewed.ts';
import { route } from '../../route.ts';
import type { Ground } from '../../start.ts';
import { view } from '../../view.ts';
import { words } from '../../words.ts';
import { Question } from './question.tsx';
import { Session } from './session.ts';
import { Placed } from './where-to-begin.tsx';

/** Nobody has answered in this time, in milliseconds: what comes after the answer is fetched then. */
const READING = 1000;

/** The practice: one question after another. */
export function Practise({ ground }: { ground: Ground }) {
  const session = useMemo(() => new Session(ground, () => view.peek()), [ground]);
  const { screen, detail } = route.value;
  useEffect(() => {
    if (screen === 'practise') session.keepTo(detail ?? null).catch(() => undefined);
  }, [session, screen, detail]);
  useEffect(() => {
    // The first question is on the screen before anything else is fetched.
    session
      .begin()
      .then(ground.settle, ground.settle)
      .then(() => new Promise((resolve) => setTimeout(resolve, READING)))
      .then(() => {
        fetchMarkParts();
        fetchLaying();
        return ground.engine.call('rest', {});
      })
      .catch(partMissing);
  }, [session, ground]);
  const wanted = view.value;
  const before = useRef(wanted);
  useEffect(() => {
    if (before.current === wanted) return;
    before.current = wanted;
    session.redraw().catch(() => undefined);
  }, [session, wanted]);
  const { frame, practise } = words('first');
  const phase = session.phase.value;
  switch (phase.kind) {
    case 'preparing':
      return <p role="status">{practise.drawing}</p>;
    case 'placed':
      return <Placed session={session} known={phase.known} of={phase.of} />;
    case 'nothing':
    case 'failed':
      return (
        <div class="opening" role="status">
          <p>{phase.why}</p>
          <button type="button" class="button" onClick={() => session.next()}>
            {phase.kind === 'failed' && phase.onPaper ? practise.nextQuestion : frame.tryAgain}
          </button>
        </div>
      );
    default:
      return <Question session={session} ground={ground} phase={phase} />;
  }
}
