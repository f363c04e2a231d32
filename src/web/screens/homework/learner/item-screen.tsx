import { useEffect } from 'preact/hooks';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Button } from '../../../forms/button.tsx';
import type { Outbox } from '../../../local/homework/outbox.ts';
import { DrawingInWords } from '../../../parts/drawing-in-words.tsx';
import { AnswerForm } from '../../../question/answer-form.tsx';
import { AskedDrawing } from '../../../question/asked-drawing.tsx';
import { Talk } from '../../../question/talk.tsx';
import { TitleBlock } from '../../../question/title-block.tsx';
import { useDrawnAsked } from '../../../question/use-drawn.ts';
import { useMoment } from '../../../question/use-moment.ts';
import type { Ground } from '../../../start.ts';
import { unbroken, words } from '../../../words.ts';
import { addressOf } from '../homework-route.ts';
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

function Desk({ ground, session, at }: Pick<Props, 'ground' | 'session' | 'at'>) {
  const { common } = words('homework');
  const { question, asked, marks } = session.items[at]!;
  const { title = asked.title } = question.circuit;
  const drawn = useDrawnAsked(ground, question.circuit, asked);
  const chosen = session.chosenIn(at);
  const number = common.itemOf({ number: at + 1, count: session.items.length });
  return (
    <div class="desk">
      <TitleBlock
        title={title}
        cells={[session.view.value.paper.title, number, common.marks(marks)]}
        follows={at}
      />
      <AskedDrawing
        asked={asked}
        title={question.circuit.title}
        drawn={drawn}
        chosen={chosen}
        open={session.open()}
        onChange={(states) => {
          session.choose(at, states).catch(() => undefined);
        }}
        {...useMoment(asked, chosen, at)}
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
          <Button kind="plain" busy={busy} onPress={() => run(ask)}>
            {words('homework').paper.item.hint}
          </Button>
        </p>
      )}
      {failure && <p role="alert">{failure}</p>}
    </>
  );
}

/** How saving stands, and the ways to the other items. */
function Walk({ outbox, session, at }: Omit<Props, 'ground'>) {
  const { paper, common } = words('homework');
  const last = session.items.length - 1;
  const to = (item: number | null): string => addressOf({ at: 'paper', paper: session.id, item });
  return (
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
      <a class="button main" href={to(at < last ? at + 2 : null)}>
        {at < last ? common.walk.next : paper.item.lookOver}
      </a>
    </div>
  );
}

/** One item of a paper: the drawing and the question, as in practice, but without a mark. */
export function ItemScreen({ ground, outbox, session, at }: Props) {
  const { paper } = words('homework');
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
  return (
    <form class="question known on-paper" onSubmit={(event) => event.preventDefault()}>
      <ItemStrip session={session} at={at} />
      <Desk ground={ground} session={session} at={at} />
      <Talk
        asked={asked}
        answer={
          <>
            <fieldset class="plain-fieldset" disabled={!session.open()} aria-label={paper.item.answer}>
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
          </>
        }
      >
        <DrawingInWords ground={ground} circuit={question.circuit} />
      </Talk>
      <Walk outbox={outbox} session={session} at={at} />
    </form>
  );
}
