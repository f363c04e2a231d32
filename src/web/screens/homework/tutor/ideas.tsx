import { useEffect, useState } from 'preact/hooks';
import type { SetReport } from '../../../../../shared/homework-views.ts';
import type { Asked } from '../../../../../shared/question.ts';
import { asLongAsWanted } from '../../../parts/as-long-as-wanted.ts';
import { ShownItem } from '../../../question/shown-item.tsx';
import type { Ground } from '../../../start.ts';
import { unbroken, words } from '../../../words.ts';
import { namesOf } from './names.ts';

type Idea = SetReport['report']['ideas'][number];

/** The smallest drawing on which an idea showed, for the board: what was answered there, and what is right. */
function Example({ ground, example }: { ground: Ground; example: NonNullable<Idea['example']> }) {
  const w = words('sets').report.ideas;
  const { question } = example.item;
  const [asked, setAsked] = useState<Asked>();
  useEffect(() => asLongAsWanted(ground.engine.call('ask', { question }), setAsked), [ground, question]);
  if (!asked) return <p class="waiting">{words('first').parts.drawing.underWay}</p>;
  const labels = new Map(asked.items.map(({ item, label }) => [item, label]));
  const wrong = example.mark.parts.filter(({ correct, given }) => !correct && given !== undefined);
  return (
    <ShownItem
      ground={ground}
      question={question}
      asked={asked}
      mark={example.mark}
      title={question.circuit.title ?? asked.title}
    >
      <div class="idea">
        <p>{w.answered}</p>
        <ul>
          {wrong.map(({ item, given }) => (
            <li key={item}>{unbroken(w.given({ label: labels.get(item) ?? item, given: given ?? '' }))}</li>
          ))}
        </ul>
      </div>
    </ShownItem>
  );
}

function IdeaEntry({ ground, idea, nameOf }: { ground: Ground; idea: Idea; nameOf: (id: string) => string }) {
  const w = words('sets').report.ideas;
  const [open, setOpen] = useState(false);
  return (
    <li>
      <p>
        <strong>{idea.idea}</strong> {idea.advice}
      </p>
      <p class="quiet">{w.shownIn({ times: idea.times, names: idea.learners.map(nameOf) })}</p>
      {idea.example && (
        <details class="in-words" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
          <summary>{w.example}</summary>
          {open && <Example ground={ground} example={idea.example} />}
        </details>
      )}
    </li>
  );
}

/** The commonest wrong ideas of a class, each with a drawing to speak about. */
export function Ideas({ ground, report: { report, people } }: { ground: Ground; report: SetReport }) {
  const w = words('sets').report.ideas;
  const nameOf = namesOf(people);
  return (
    <section>
      <h2>{w.title}</h2>
      {report.ideas.length === 0 ? (
        <p>{w.none}</p>
      ) : (
        <ol class="set-list">
          {report.ideas.map((idea) => (
            <IdeaEntry key={idea.id} ground={ground} idea={idea} nameOf={nameOf} />
          ))}
        </ol>
      )}
    </section>
  );
}
