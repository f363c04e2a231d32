import './try-it.css';
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Circuit } from '../../../../shared/circuit.ts';
import type { Act, Fault, Scenario } from '../../../../shared/scenario.ts';
import type { Live } from '../../engine/messages.ts';
import { Board } from '../../parts/board.tsx';
import { CircuitTiming } from '../../parts/circuit-timing.tsx';
import { Drawing, type Touchable } from '../../parts/drawing.tsx';
import { DrawingInWords } from '../../parts/drawing-in-words.tsx';
import type { ScreenProps } from '../../parts/loaded.tsx';
import { lastCircuit } from '../../try-circuit.ts';
import { view } from '../../view.ts';

interface Named {
  readonly id: string;
  readonly title: string;
  readonly circuit: Circuit;
}

/** Terminals in the order of the drawing's paths, each once. */
const terminalsOf = ({ paths }: Circuit): string[] => [
  ...new Set(
    paths.flatMap(({ steps }) =>
      steps.flatMap(({ device, enter, leave }) => [
        `${device}:${enter}`,
        ...(leave ? [`${device}:${leave}`] : []),
      ]),
    ),
  ),
];

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
      Circuit
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

function Meter({
  circuit,
  points,
  reading,
  onChange,
}: {
  circuit: Circuit;
  points: readonly [string, string];
  reading: string | undefined;
  onChange: (points: readonly [string, string]) => void;
}) {
  const terminals = useMemo(() => terminalsOf(circuit), [circuit]);
  const choose = (at: 0 | 1) => (
    <select
      aria-label={at === 0 ? 'First point' : 'Second point'}
      value={points[at]}
      onChange={({ currentTarget: { value } }) =>
        onChange(at === 0 ? [value, points[1]] : [points[0], value])
      }
    >
      <option value="">–</option>
      {terminals.map((terminal) => (
        <option key={terminal}>{terminal}</option>
      ))}
    </select>
  );
  return (
    <section>
      <h2>Meter</h2>
      <p class="row">
        between {choose(0)} and {choose(1)}
      </p>
      <p role="status" class="reading">
        {reading ? `It shows ${reading}.` : 'Connect both points.'}
      </p>
      <p class="caution">
        On a drawing a meter is safe. On a real panel: isolate, lock off, prove the tester, prove dead, prove
        the tester again, and mind supplies from elsewhere. Local codes and licensed practice decide who
        measures live.
      </p>
    </section>
  );
}

const doneInWords = (count: number): string => (count === 1 ? 'After 1 act' : `After ${count} acts`);

/** So many acts one after another are worked out anew each time. */
const MOST_ACTS = 100;

/** What of the drawing an act is done to. */
const subjectOf = (act: Act): string | undefined =>
  'device' in act && !('point' in act) ? act.device : undefined;

/** One circuit that can be worked: press, hold, break a conductor, measure. */
function Bench({ ground, circuit }: { ground: ScreenProps['ground']; circuit: Circuit }) {
  const [acts, setActs] = useState<readonly Act[]>([]);
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const [points, setPoints] = useState<readonly [string, string]>(['', '']);
  const [live, setLive] = useState<Live>();
  const [failure, setFailure] = useState<string>();
  const scenario = useMemo<Scenario>(
    () => ({ start: 'live', faults: [...faults], acts: [...acts] }),
    [faults, acts],
  );
  const wanted = view.value;
  useEffect(() => {
    let here = true;
    const meter = points[0] && points[1] ? { meter: points } : {};
    ground.engine.call('live', { circuit, acts, faults, ...meter, view: wanted }).then(
      (made) => here && setLive(made),
      (error: Error) => here && setFailure(error.message),
    );
    return () => {
      here = false;
    };
  }, [ground, circuit, acts, faults, points, wanted]);
  if (failure) return <p role="status">{failure}</p>;
  if (!live) return <p role="status">Switching on…</p>;
  const act = (wanted: Act): void => setActs([...acts, wanted].slice(-MOST_ACTS));
  const touchable = new Map<string, Touchable>();
  for (const { act: possible, words } of live.acts) {
    const subject = subjectOf(possible);
    const at =
      possible.kind === 'hold' || possible.kind === 'free' ? (['coil'] as const) : (['contact'] as const);
    if (subject && !touchable.has(subject)) touchable.set(subject, { label: words, state: undefined, at });
  }
  return (
    <div class="question known">
      <div class="desk">
        <div class="title-block">
          <h2>{circuit.title ?? 'A circuit'}</h2>
          <p class="cell">{acts.length === 0 ? 'Switched on' : doneInWords(acts.length)}</p>
        </div>
        <Board>
          <Drawing
            drawn={live.drawn}
            touchable={touchable}
            onTouch={(item) => {
              const found = live.acts.find(({ act }) => subjectOf(act) === item);
              if (found) act(found.act);
            }}
            description={`The circuit as it stands: ${live.readings.map(({ item, state }) => `${item} ${state}`).join(', ')}`}
          />
        </Board>
      </div>
      <div class="talk">
        {live.outcome.kind !== 'steady' && (
          <p class="caution" role="status">
            {live.outcome.kind === 'keeps-switching' &&
              `It keeps switching: ${live.outcome.devices.join(', ')} never rest.`}
            {live.outcome.kind === 'race' &&
              `A race: which of ${live.outcome.devices.join(', ')} is faster decides how it ends. Shown is one way.`}
            {live.outcome.kind === 'protection-tripped' &&
              `A short circuit: ${live.outcome.devices.join(', ') || 'nothing protects it, the supply'} opened.`}
          </p>
        )}
        <section>
          <h2>Do</h2>
          <div class="row acts">
            {live.acts.map(({ act: done, words }) => (
              <button key={JSON.stringify(done)} type="button" class="button" onClick={() => act(done)}>
                {words}
              </button>
            ))}
          </div>
          <p class="row">
            <button
              type="button"
              class="button plain"
              disabled={acts.length === 0}
              onClick={() => setActs(acts.slice(0, -1))}
            >
              Take back
            </button>
            <button
              type="button"
              class="button plain"
              onClick={() => {
                setActs([]);
                setFaults([]);
              }}
            >
              From the start
            </button>
          </p>
        </section>
        <section>
          <h2>As it stands</h2>
          <ul class="readings" aria-live="polite">
            {live.readings.map(({ item, label, state }) => (
              <li key={item}>
                <strong>{item}</strong> {label} <em>{state}</em>
              </li>
            ))}
          </ul>
        </section>
        <section>
          <h2>Break a conductor</h2>
          <select
            aria-label="Conductor off at terminal"
            value=""
            onChange={({ currentTarget: { value } }) =>
              value && setFaults([...faults, { kind: 'loose' as const, at: value }].slice(-10))
            }
          >
            <option value="">off at terminal…</option>
            {terminalsOf(circuit).map((terminal) => (
              <option key={terminal}>{terminal}</option>
            ))}
          </select>
          <ul class="readings">
            {faults.map((fault) => (
              <li key={JSON.stringify(fault)}>
                {fault.kind === 'loose' ? `off at ${fault.at}` : fault.kind}{' '}
                <button
                  type="button"
                  class="button plain"
                  onClick={() => setFaults(faults.filter((other) => other !== fault))}
                >
                  Put it back
                </button>
              </li>
            ))}
          </ul>
        </section>
        <Meter circuit={circuit} points={points} reading={live.meter} onChange={setPoints} />
        {acts.length > 0 && <CircuitTiming ground={ground} circuit={circuit} scenario={scenario} />}
        <DrawingInWords ground={ground} circuit={circuit} />
      </div>
    </div>
  );
}

/** Any circuit of the banks, and the one of the last question, to be worked. */
export function TryIt({ ground, detail }: ScreenProps) {
  const last = lastCircuit.value;
  const all: Named[] = useMemo(
    () => [
      ...(last
        ? [{ id: 'last', title: `Of the last question: ${last.title ?? 'untitled'}`, circuit: last }]
        : []),
      ...ground.bank.topics.flatMap((topic) =>
        topic.circuits.map(({ id, circuit }) => ({
          id: `${topic.id}.${id}`,
          title: circuit.title ?? id,
          circuit,
        })),
      ),
    ],
    [ground, last],
  );
  const chosen = all.find(({ id }) => id === detail) ?? all[0];
  if (!chosen) return <p>No circuit yet: answer a question, or read a lesson.</p>;
  return (
    <div class="try">
      <h1>Try it</h1>
      <Chooser
        all={all}
        chosen={chosen.id}
        onChoose={(id) => {
          location.hash = `#/try/${encodeURIComponent(id)}`;
        }}
      />
      <Bench key={chosen.id} ground={ground} circuit={chosen.circuit} />
    </div>
  );
}
