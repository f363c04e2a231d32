import './lessons.css';
import type { Bank, LessonPart, Topic } from '../../../../shared/bank.ts';
import { Board } from '../../parts/board.tsx';
import { CircuitDrawing } from '../../parts/circuit-drawing.tsx';
import type { ScreenProps } from '../../parts/loaded.tsx';
import { Markdown } from '../../parts/markdown.tsx';
import { written } from '../../parts/written.tsx';
import type { Ground } from '../../start.ts';
import { set, words } from '../../words.ts';
import { FixedQuestion } from './fixed-question.tsx';

function Part({ ground, topic, part }: { ground: Ground; topic: Topic; part: LessonPart }) {
  switch (part.kind) {
    case 'text':
      return <Markdown text={part.markdown} {...written(topic)} />;
    case 'drawing': {
      const shown = topic.circuits.find(({ id }) => id === part.circuit);
      return shown ? (
        <>
          <Board>
            <CircuitDrawing ground={ground} circuit={shown.circuit} scenario={part.scenario} />
          </Board>
          <p class="under">
            <a href={`#/try/${topic.id}.${shown.id}`}>{words('lessons').tryThis}</a>
          </p>
        </>
      ) : null;
    }
    case 'question': {
      const fixed = topic.questions.find(({ id }) => id === part.question);
      return fixed ? <FixedQuestion ground={ground} topic={topic} fixed={fixed} /> : null;
    }
  }
}

function Lesson({
  ground,
  topic,
  place,
  next,
}: {
  ground: Ground;
  topic: Topic;
  place: { readonly at: number; readonly of: number };
  next: Topic | undefined;
}) {
  const w = words('lessons');
  return (
    <article class="lesson">
      <p>
        <a href="#/lessons">{w.all}</a>
      </p>
      <div class="title-block">
        <h1 {...written(topic)}>{topic.title}</h1>
        <p class="cell wide">{w.skills(topic.skills.length)}</p>
        <p class="cell">{w.placeOf(place)}</p>
      </div>
      <p class="summary" {...written(topic)}>
        {topic.summary}
      </p>
      {topic.lesson.map((section, at) => (
        <section key={`${at} ${section.title ?? ''}`}>
          {section.title &&
            (section.depth === 2 ? (
              <h2 {...written(topic)}>{section.title}</h2>
            ) : (
              <h3 {...written(topic)}>{section.title}</h3>
            ))}
          {section.parts.map((part, index) => (
            <Part key={`${index} ${part.kind}`} ground={ground} topic={topic} part={part} />
          ))}
        </section>
      ))}
      <p class="row">
        <a href="#/practise">{w.practise}</a>
        {next && (
          <a href={`#/lessons/${next.id}`}>
            {set(w.next('{title}'), { title: <span {...written(next)}>{next.title}</span> })}
          </a>
        )}
      </p>
    </article>
  );
}

function Contents({ bank }: { bank: Bank }) {
  return (
    <div class="contents">
      <h1>{words('lessons').title}</h1>
      <ol>
        {bank.topics.map((topic) => (
          <li key={topic.id} {...written(topic)}>
            <a href={`#/lessons/${topic.id}`}>{topic.title}</a>
            <p>{topic.summary}</p>
            <p class="skills">{topic.skills.map(({ title }) => title).join(' · ')}</p>
          </li>
        ))}
      </ol>
    </div>
  );
}

/** The banks' lessons: the list of them, or one with its live drawings. */
export function Lessons({ ground, detail }: ScreenProps) {
  const { topics } = ground.bank;
  const at = topics.findIndex(({ id }) => id === detail);
  const topic = topics[at];
  return topic ? (
    <Lesson
      key={topic.id}
      ground={ground}
      topic={topic}
      place={{ at: at + 1, of: topics.length }}
      next={topics[at + 1]}
    />
  ) : (
    <Contents bank={ground.bank} />
  );
}
