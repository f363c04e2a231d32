import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../../../api.ts';
import { useAct } from '../../../parts/act.ts';
import { Board } from '../../../parts/board.tsx';
import { Drawing } from '../../../parts/drawing.tsx';
import { DrawingInWords } from '../../../parts/drawing-in-words.tsx';
import { SwitchRow } from '../../../parts/switch-row.tsx';
import { unbroken } from '../../../parts/unbroken.ts';
import type { Ground } from '../../../start.ts';
import { words } from '../../../words.ts';
import { NOTHING, voltsOf } from '../../practise/answer.ts';
import { AnswerForm } from '../../practise/answer-form.tsx';
import { conductorsLaid, openStep, stepsAsked, touchableOf, wire } from '../../practise/on-drawing.ts';
import { Situation } from '../../practise/situation.tsx';
import type { Outbox } from '../kept/outbox.ts';
import { useDrawnAsked } from '../parts/use-drawn.ts';
import { addressOf } from '../where.ts';
import { ItemStrip } from './item-strip.tsx';
import { Keeping } from './keeping.tsx';
import type { PaperSession } from './paper-session.ts';

interface Props {
  readonly ground: Ground;
  readonly outbox: Outbox;
  readonly session: PaperSession;
  /** Index. */
  readonly at: number;
}

/** What has been typed, as the meter's face shows it. */
function faceOf(typed: string | undefined): string {
  const { meter } = words('first').parts;
  if (typed === NOTHING) return meter.nothing;
  const volts = voltsOf(typed ?? '');
  return volts === undefined ? meter.notYet : meter.volts(volts);
}

function Heading({ session, at }: Pick<Props, 'session' | 'at'>) {
  const { common } = words('homework');
  const heading = useRef<HTMLHeadingElement>(null);
  const { question, asked, marks } = session.items[at]!;
  useEffect(() => {
    // Reading begins at the new item, for a keyboard and a screen reader too.
    heading.current?.focus({ preventScroll: true });
    scrollTo({ top: 0 });
  }, [at]);
  return (
    <div class="title-block">
      <h1 ref={heading} tabIndex={-1}>
        {question.circuit.title ?? asked.title}
      </h1>
      <p class="cell wide">{session.view.value.paper.title}</p>
      <p class="cell">{common.itemOf({ number: at + 1, count: session.items.length })}</p>
      <p class="cell">{common.marks(marks)}</p>
    </div>
  );
}

function Desk({
  ground,
  session,
  at,
  step,
  onStep,
}: Pick<Props, 'ground' | 'session' | 'at'> & {
  readonly step: string | undefined;
  readonly onStep: (step: string) => void;
}) {
  const { parts } = words('first');
  const w = words('homework').paper.item;
  const { question, asked } = session.items[at]!;
  const drawn = useDrawnAsked(ground, question);
  const chosen = session.chosenIn(at);
  const steps = question.kind === 'sequence' ? [...stepsAsked(asked).keys()] : [];
  const stepShown = step ?? openStep(asked, chosen);
  const touchable = touchableOf(question, asked, chosen, stepShown, undefined);
  const keep = (states: readonly (readonly [string, string])[]): void => {
    session.choose(at, states).catch(() => undefined);
  };
  const touch = (place: string): void => {
    if (question.kind === 'wiring') {
      keep(wire(question, asked, chosen, place));
      return;
    }
    const item =
      question.kind === 'sequence'
        ? stepsAsked(asked)
            .get(stepShown)
            ?.find((entry) => entry.place === place)?.item
        : asked.items.find((each) => each.item === place);
    if (!item) return;
    const now = chosen.get(item.item);
    const next = item.values[now === undefined ? 0 : (item.values.indexOf(now) + 1) % item.values.length];
    if (next !== undefined) keep([[item.item, next]]);
    // What is being turned stays, also when its step is complete.
    if (steps.length > 0) onStep(stepShown);
  };
  return (
    <div class="desk">
      <Heading session={session} at={at} />
      {steps.length > 1 && (
        <SwitchRow
          label={w.step}
          options={steps.map((after) => ({
            value: after,
            text: after === '0' ? w.start : w.after(after),
          }))}
          chosen={stepShown}
          onChoose={onStep}
        />
      )}
      {drawn ? (
        <Board>
          <Drawing
            drawn={drawn}
            description={parts.drawing.asked(question.circuit.title ?? asked.title)}
            {...(session.open() ? { touchable } : {})}
            {...(touchable.size === 0 ? { asked: asked.items.flatMap(({ about }) => about) } : {})}
            conductors={conductorsLaid(question, asked, chosen)}
            onTouch={touch}
            {...(question.kind === 'meter' ? { meter: faceOf(chosen.get('volts')) } : {})}
          />
        </Board>
      ) : (
        <p class="waiting" role="status">
          {parts.drawing.underWay}
        </p>
      )}
    </div>
  );
}

function Hint({ session, at }: Pick<Props, 'session' | 'at'>) {
  const { busy, failure, run } = useAct();
  const text = session.hints.value.get(at);
  if (session.view.value.paper.help !== 'hints') return null;
  const ask = async (): Promise<void> => {
    const given = await call('askHint', { params: { paper: session.id }, body: { item: at } });
    session.takeHint(given.item, given.text);
  };
  return (
    <>
      <p class={text ? 'hint' : 'hint empty'} role="status">
        {unbroken(text ?? '')}
      </p>
      {!text && session.open() && (
        <p>
          <button type="button" class="button plain" disabled={busy} onClick={() => run(ask)}>
            {words('homework').paper.item.hint}
          </button>
        </p>
      )}
      {failure && <p role="alert">{failure}</p>}
    </>
  );
}

/** One item of a paper: the drawing and the question, as in practice, but without a mark. */
export function ItemScreen({ ground, outbox, session, at }: Props) {
  const { paper, common } = words('homework');
  const { asked, question } = session.items[at]!;
  const [step, setStep] = useState<string>();
  useEffect(() => {
    setStep(undefined);
    // Time is counted only while somebody can see the item.
    const look = (): void => session.look(document.visibilityState === 'visible' ? at : undefined);
    look();
    document.addEventListener('visibilitychange', look);
    return () => {
      document.removeEventListener('visibilitychange', look);
      session.look(undefined);
    };
  }, [session, at]);
  const open = session.open();
  const last = session.items.length - 1;
  const to = (item: number | null): string => addressOf({ at: 'paper', paper: session.id, item });
  return (
    <form class="question known on-paper" onSubmit={(event) => event.preventDefault()}>
      <ItemStrip session={session} at={at} />
      <Desk ground={ground} session={session} at={at} step={step} onStep={setStep} />
      <div class="talk">
        <Situation sentences={asked.situation} />
        <h2>{unbroken(asked.task)}</h2>
        <fieldset class="plain-fieldset" disabled={!open} aria-label={paper.item.answer}>
          <AnswerForm
            key={at}
            asked={asked}
            chosen={session.chosenIn(at)}
            onChoose={(item, state) => {
              session.choose(at, [[item, state]]).catch(() => undefined);
            }}
          />
        </fieldset>
        <Hint session={session} at={at} />
        {asked.cautions.length > 0 && (
          <div class="caution">
            {asked.cautions.map((caution) => (
              <p key={caution}>{caution}</p>
            ))}
          </div>
        )}
        <DrawingInWords ground={ground} circuit={question.circuit} />
      </div>
      <div class="bar walk">
        <Keeping outbox={outbox} paper={session.id} closesAt={session.view.value.paper.closesAt} />
        {at > 0 ? (
          <a class="button" href={to(at)}>
            {common.walk.back}
          </a>
        ) : null}
        <a class="button plain" href={to(null)}>
          {common.walk.all}
        </a>
        {at < last ? (
          <a class="button main" href={to(at + 2)}>
            {common.walk.next}
          </a>
        ) : (
          <a class="button main" href={to(null)}>
            {paper.item.lookOver}
          </a>
        )}
      </div>
    </form>
  );
}
