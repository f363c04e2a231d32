import { lessonFor } from '../../practice/lesson-for.ts';
import { Board } from '../parts/board.tsx';
import { CircuitDrawing } from '../parts/circuit-drawing.tsx';
import { Markdown } from '../parts/markdown.tsx';
import { written } from '../parts/written.tsx';
import type { Ground } from '../start.ts';
import { words } from '../words.ts';

/** The part of a lesson that helps where a skill went wrong twice in a row: its text and its drawings, and the way to the rest. */
export function LessonPart({ ground, skill }: { ground: Ground; skill: string }) {
  const found = lessonFor(ground.bank, skill);
  if (!found) return null;
  const { topic, section } = found;
  const w = words('lessons').helps;
  return (
    <section class="lesson-part">
      <h2>{w.title}</h2>
      <p>{w.why}</p>
      {section.title !== null && <h3 {...written(topic)}>{section.title}</h3>}
      {section.parts.map((part, at) => {
        if (part.kind === 'text') return <Markdown key={at} text={part.markdown} {...written(topic)} />;
        const shown = part.kind === 'drawing' && topic.circuits.find(({ id }) => id === part.circuit);
        return shown ? (
          <Board key={at}>
            <CircuitDrawing ground={ground} circuit={shown.circuit} scenario={part.scenario} />
          </Board>
        ) : null;
      })}
      <p>
        <a class="onward" href={`#/lessons/${topic.id}`}>
          {w.whole}
        </a>
      </p>
    </section>
  );
}
