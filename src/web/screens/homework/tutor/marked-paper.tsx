import { useState } from 'preact/hooks';
import type { MarkedPaper } from '../../../../../shared/homework-views.ts';
import { codeInGroups } from '../../../../homework/paper-code.ts';
import { ApiFailure, call, type Takes } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Button } from '../../../forms/button.tsx';
import { Refused } from '../../../forms/failure.tsx';
import { Form } from '../../../forms/form.tsx';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { MarkedQuestion } from '../../../question/marked-question.tsx';
import type { Ground } from '../../../start.ts';
import { words } from '../../../words.ts';
import { addressOf } from '../homework-route.ts';
import { Head } from '../parts/head.tsx';
import { ItemBar } from '../parts/item-bar.tsx';
import { ItemTable } from '../parts/item-table.tsx';
import { earnedIn, earnedText, itemVerdict, shownMarks } from '../parts/item-verdict.tsx';
import { SkillTable } from '../parts/skill-table.tsx';

interface ItemProps {
  readonly marked: MarkedPaper;
  /** Index. */
  readonly at: number;
  readonly onMarked: (marked: MarkedPaper) => void;
}

type OwnMarkIn = NonNullable<Takes<'overrideMark'>['body']>;

/** Gives it. What somebody else gave meanwhile is shown beside the words that tell of it. */
async function overridden(
  paper: string,
  body: OwnMarkIn,
  onMarked: ItemProps['onMarked'],
): Promise<MarkedPaper> {
  const params = { paper };
  try {
    return await call('overrideMark', { params, body });
  } catch (error) {
    if (error instanceof ApiFailure && error.code === 'marked-meanwhile')
      onMarked(await call('markedPaper', { params }));
    throw error;
  }
}

/** The tutor's own mark, with the reason that is kept. */
function OwnMark({ marked, at, onMarked }: ItemProps) {
  const { papers, common } = words('sets');
  const w = papers.ownMark;
  const item = marked.mark.items[at]!;
  const [earned, setEarned] = useState(shownMarks(earnedIn(item)));
  const [reason, setReason] = useState('');
  const { busy, failure, run } = useAct();
  const keep = async (): Promise<void> => {
    const body = { item: at, earned: Number(earned.replace(',', '.')), reason, known: item.overrides.length };
    onMarked(await overridden(marked.id, body, onMarked));
    setReason('');
  };
  return (
    <Form class="own-mark" byBrowser onSend={() => run(keep)}>
      <h2>{w.title}</h2>
      <label class="field narrow">
        {w.marks(item.marks)}
        <input
          type="number"
          inputMode="decimal"
          min={0}
          max={item.marks}
          step={0.01}
          required
          value={earned}
          onInput={({ currentTarget }) => setEarned(currentTarget.value)}
        />
      </label>
      <label class="field">
        {w.reason}
        <textarea
          rows={2}
          maxLength={1000}
          required
          value={reason}
          onInput={({ currentTarget }) => setReason(currentTarget.value)}
        />
      </label>
      <p class="quiet">{w.firstStays}</p>
      <Refused words={failure} />
      <Button busy={busy} meanwhile={common.keeping} disabled={reason.trim() === ''}>
        {w.keep}
      </Button>
    </Form>
  );
}

function Item({ ground, set, marked, at, onMarked }: ItemProps & { ground: Ground; set: string }) {
  const { question } = marked.paper.items[at]!;
  const mark = marked.mark.items[at]!;
  const last = marked.paper.items.length - 1;
  const to = (item: number | null): string => addressOf({ at: 'marked', set, paper: marked.id, item });
  return (
    <MarkedQuestion
      ground={ground}
      question={question}
      mark={mark.mark}
      cells={[
        marked.name,
        words('homework').common.itemOf({ number: at + 1, count: last + 1 }),
        earnedText(mark),
      ]}
      verdict={itemVerdict(mark)}
      bar={<ItemBar at={at} last={last} to={to} />}
    >
      <OwnMark key={`${marked.id} ${at}`} marked={marked} at={at} onMarked={onMarked} />
    </MarkedQuestion>
  );
}

/** Circuits of the paper that were to be marked or run elsewhere while it was open. They weren't. */
function Tried({ marked: { tried } }: { marked: MarkedPaper }) {
  const w = words('sets').papers.tried;
  if (tried.length === 0) return null;
  return (
    <section>
      <h2>{w.title}</h2>
      <p class="quiet">{w.ofOne}</p>
      <ul>
        {tried.map(({ item, place, firstAt, lastAt, times }) => (
          <li key={`${item} ${place}`}>{w.in[place]({ item: item + 1, firstAt, lastAt, times })}</li>
        ))}
      </ul>
    </section>
  );
}

function Whole({ set, marked }: { set: string; marked: MarkedPaper }) {
  const { one: w } = words('sets').papers;
  const { common } = words('homework');
  const { total, skills, ideas, attempt } = marked.report;
  return (
    <div class="homework">
      <Head
        title={marked.name}
        cells={[
          marked.title,
          w.marks(total),
          words('first').parts.share(total.share),
          attempt > 1 ? common.attempt(attempt) : null,
          w.paper(codeInGroups(marked.code)),
          marked.submittedAt === null ? w.notHandedIn : common.handedIn(marked.submittedAt),
        ]}
      />
      <ItemTable
        paper={marked.paper}
        mark={marked.mark}
        to={(item) => addressOf({ at: 'marked', set, paper: marked.id, item })}
      />
      {marked.mark.items.some(({ overrides }) => overrides.length > 0) && <p class="quiet">{w.byTutor}</p>}
      <Tried marked={marked} />
      <SkillTable skills={skills} />
      {ideas.length > 0 && (
        <section>
          <h2>{w.ideas}</h2>
          <ul>
            {ideas.map(({ id, idea, times }) => (
              <li key={id}>{w.idea({ idea, times })}</li>
            ))}
          </ul>
        </section>
      )}
      <p class="row">
        <a href={addressOf({ at: 'set', set })}>{w.set}</a>
        <a href={addressOf({ at: 'report', report: 'report', of: set })}>{w.report}</a>
      </p>
    </div>
  );
}

/** One learner's marked paper, looked through by a tutor. */
export function MarkedPaperScreen({
  ground,
  set,
  paper,
  item,
}: {
  ground: Ground;
  set: string;
  paper: string;
  item: number | null;
}) {
  const { fetched, again, put } = useFetched(paper, () => call('markedPaper', { params: { paper } }));
  return (
    <Show of={fetched} again={again}>
      {(marked) =>
        item !== null && marked.paper.items[item - 1] ? (
          <Item
            ground={ground}
            set={set}
            marked={marked}
            at={item - 1}
            // Its questions are what they were: what stands drawn, and what was typed under it, stays.
            onMarked={(anew) => put({ ...anew, paper: marked.paper })}
          />
        ) : (
          <Whole set={set} marked={marked} />
        )
      }
    </Show>
  );
}
