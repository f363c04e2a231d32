import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import type { Outbox } from '../../../local/homework/outbox.ts';
import { DrawingInWords } from '../../../parts/drawing-in-words.tsx';
import { unbroken } from '../../../parts/unbroken.ts';
import { AnswerForm } from '../../../question/answer-form.tsx';
import { AskedDrawing } from '../../../question/asked-drawing.tsx';
import { openMoment, touchableOf } from '../../../question/on-drawing.ts';
import { Situation } from '../../../question/situation.tsx';
import { useDrawnAsked } from '../../../question/use-drawn.ts';
import type { Ground } from '../../../start.ts';
import { words } from '../../../words.ts';
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

function Desk({ ground, session, at }: Pick<Props, 'ground' | 'session' | 'at'>) {
  const { question, asked } = session.items[at]!;
  const drawn = useDrawnAsked(ground, question.circuit, asked);
  const chosen = session.chosenIn(at);
  const [moment, setMoment] = useState<number>();
  useEffect(() => setMoment(undefined), [at]);
  const momentShown = moment ?? openMoment(asked, chosen);
  return (
    <div class="desk">
      <Heading session={session} at={at} />
      <AskedDrawing
        asked={asked}
        title={question.circuit.title}
        drawn={drawn}
        chosen={chosen}
        touchable={touchableOf(asked, chosen, momentShown, undefined)}
        open={session.open()}
        moment={momentShown}
        onMoment={setMoment}
        onChange={(states) => {
          session.choose(at, states).catch(() => undefined);
        }}
      />
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
  useEffect(() => {
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
      <Desk ground={ground} session={session} at={at} />
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
