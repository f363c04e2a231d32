import './try-it.css';
import { useMemo } from 'preact/hooks';
import type { Circuit } from '../../../../shared/circuit.ts';
import type { ScreenProps } from '../../parts/loaded.tsx';
import { lastCircuit } from '../../try-circuit.ts';
import { words } from '../../words.ts';
import { Workbench } from './workbench.tsx';

interface Named {
  readonly id: string;
  readonly title: string;
  readonly circuit: Circuit;
}

function Chooser({
  all,
  chosen,
  onChoose,
}: {
  all: readonly Named[];
  chosen: string;
  onChoose: (id: string) => void;
}) {
  return (
    <label class="chooser">
      {words('try').circuit}
      <select value={chosen} onChange={({ currentTarget }) => onChoose(currentTarget.value)}>
        {all.map(({ id, title }) => (
          <option key={id} value={id}>
            {title}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Any circuit of the banks, and the one of the last question, to be worked. */
export function TryIt({ ground, detail }: ScreenProps) {
  const w = words('try');
  const last = lastCircuit.value;
  const all: Named[] = useMemo(
    () => [
      ...(last ? [{ id: 'last', title: w.ofLastQuestion(last.title), circuit: last }] : []),
      ...ground.bank.topics.flatMap((topic) =>
        topic.circuits.map(({ id, circuit }) => ({
          id: `${topic.id}.${id}`,
          title: circuit.title ?? id,
          circuit,
        })),
      ),
    ],
    [ground, last, w],
  );
  const chosen = all.find(({ id }) => id === detail) ?? all[0];
  if (!chosen) return <p>{w.noneYet}</p>;
  return (
    <div class="try">
      <h1>{w.title}</h1>
      <Chooser
        all={all}
        chosen={chosen.id}
        onChoose={(id) => {
          location.hash = `#/try/${encodeURIComponent(id)}`;
        }}
      />
      <Workbench key={chosen.id} ground={ground} circuit={chosen.circuit} />
    </div>
  );
}
