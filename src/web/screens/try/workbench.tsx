import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Circuit } from '../../../../shared/circuit.ts';
import type { Act, Scenario } from '../../../../shared/scenario.ts';
import type { Outcome } from '../../../../shared/solution.ts';
import type { Live } from '../../engine/messages.ts';
import { Board } from '../../parts/board.tsx';
import { CircuitDrawing } from '../../parts/circuit-drawing.tsx';
import { CircuitTiming } from '../../parts/circuit-timing.tsx';
import { Drawing, type Touchable } from '../../parts/drawing.tsx';
import { DrawingInWords } from '../../parts/drawing-in-words.tsx';
import { NotRun } from '../../parts/not-run.tsx';
import { SwitchRow } from '../../parts/switch-row.tsx';
import type { Ground } from '../../start.ts';
import { view } from '../../view.ts';
import { ConductorsPanel } from './conductors-panel.tsx';
import { MeterPanel, type Points, reading, shown, touched } from './meter-panel.tsx';
import { WorkPanel } from './work-panel.tsx';

/** What a touch on the drawing does. */
type Way = 'work' | 'measure' | 'break';

const WAYS = [
  { value: 'work', text: 'Work it' },
  { value: 'measure', text: 'Measure' },
  { value: 'break', text: 'Break' },
] as const;

/** So many acts one after another are worked out anew each time; so many conductors may be off. */
const MOST_ACTS = 100;
const MOST_OFF = 10;

const FREE: Points = ['', ''];

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

const doneInWords = (count: number): string => {
  if (count === 0) return 'Switched on';
  return count === 1 ? 'After 1 act' : `After ${count} acts`;
};

/** What of the drawing an act is done to. */
const subjectOf = (act: Act): string | undefined =>
  'device' in act && !('point' in act) ? act.device : undefined;

function troubleInWords(outcome: Outcome): string | undefined {
  switch (outcome.kind) {
    case 'steady':
      return undefined;
    case 'keeps-switching':
      return `It keeps switching: ${outcome.devices.join(', ')} never ${outcome.devices.length === 1 ? 'rests' : 'rest'}.`;
    case 'race':
      return `A race: which of ${outcome.devices.join(', ')} is faster decides how it ends. Shown is one way.`;
    case 'undecided':
      return 'Not decided: there are more orders of operation than can be tried. What is shown need not be what happens.';
    case 'protection-tripped':
      return `A short circuit: ${outcome.devices.join(', ') || 'nothing protects it, the supply'} opened.`;
  }
}

/** What a touch can reach, by what it does. */
function touchableFor(way: Way, live: Live, points: Points, off: readonly string[]): Map<string, Touchable> {
  const touchable = new Map<string, Touchable>();
  if (way === 'work') {
    for (const { act, words } of live.acts) {
      const subject = subjectOf(act);
      const at = act.kind === 'hold' || act.kind === 'free' ? (['coil'] as const) : (['contact'] as const);
      if (subject && !touchable.has(subject)) touchable.set(subject, { label: words, state: undefined, at });
    }
    return touchable;
  }
  for (const { item } of live.points.flat()) {
    if (way === 'break') touchable.set(item, { label: item, state: off.includes(item) ? 'off' : undefined });
    else {
      const lead = points.indexOf(item) + 1;
      touchable.set(item, { label: item, state: lead > 0 ? `lead ${lead}` : undefined });
    }
  }
  return touchable;
}

/** One that isn't run: drawn it always is. */
function AtRest({ ground, circuit, why }: { ground: Ground; circuit: Circuit; why: Error }) {
  return (
    <div class="question known">
      <div class="desk">
        <div class="title-block">
          <h2>{circuit.title ?? 'A circuit'}</h2>
          <p class="cell">At rest</p>
        </div>
        <Board>
          <CircuitDrawing ground={ground} circuit={circuit} scenario={null} />
        </Board>
      </div>
      <div class="talk">
        <NotRun error={why} />
        <DrawingInWords ground={ground} circuit={circuit} />
      </div>
    </div>
  );
}

/** One circuit that can be worked: press, hold, break a conductor, measure. */
export function Workbench({ ground, circuit }: { ground: Ground; circuit: Circuit }) {
  const [acts, setActs] = useState<readonly Act[]>([]);
  const [off, setOff] = useState<readonly string[]>([]);
  const [points, setPoints] = useState(FREE);
  const [way, setWay] = useState<Way>('work');
  const [live, setLive] = useState<Live>();
  const [failure, setFailure] = useState<Error>();
  const scenario = useMemo<Scenario>(
    () => ({ start: 'live', faults: off.map((at) => ({ kind: 'loose', at })), acts: [...acts] }),
    [off, acts],
  );
  const terminals = useMemo(() => terminalsOf(circuit), [circuit]);
  const wanted = view.value;
  useEffect(() => {
    let here = true;
    const meter = points[0] && points[1] ? { meter: points } : {};
    ground.engine.call('live', { circuit, acts, faults: scenario.faults, ...meter, view: wanted }).then(
      (made) => {
        if (!here) return;
        setLive(made);
        setFailure(undefined);
      },
      (error: Error) => here && setFailure(error),
    );
    return () => {
      here = false;
    };
  }, [ground, circuit, acts, scenario, points, wanted]);
  if (!live)
    return failure ? (
      <AtRest ground={ground} circuit={circuit} why={failure} />
    ) : (
      <p role="status">Switching on…</p>
    );
  const act = (done: Act): void => setActs([...acts, done].slice(-MOST_ACTS));
  const turn = (terminal: string): void =>
    setOff(
      off.includes(terminal)
        ? off.filter((other) => other !== terminal)
        : [...off, terminal].slice(-MOST_OFF),
    );
  const touch = (item: string): void => {
    if (way === 'measure') setPoints(touched(points, item));
    else if (way === 'break') turn(item);
    else {
      const found = live.acts.find(({ act }) => subjectOf(act) === item);
      if (found) act(found.act);
    }
  };
  const face = shown(live.meter);
  const trouble = troubleInWords(live.outcome);
  const standing = live.readings.map(({ item, state }) => `${item} ${state}`).join(', ');
  return (
    <div class={`question known ${way}`}>
      <div class="desk">
        <div class="title-block">
          <h2>{circuit.title ?? 'A circuit'}</h2>
          <p class="cell">{doneInWords(acts.length)}</p>
        </div>
        <SwitchRow label="What a touch on the drawing does" options={WAYS} chosen={way} onChoose={setWay} />
        <Board>
          <Drawing
            drawn={live.drawn}
            touchable={touchableFor(way, live, points, off)}
            onTouch={touch}
            broken={off}
            description={`The circuit as it stands: ${standing}`}
            {...(way === 'work' ? {} : { points: live.points })}
            {...(face ? { meter: face } : {})}
          />
        </Board>
      </div>
      <div class="talk">
        {failure && <NotRun error={failure} />}
        {trouble && (
          <p class="caution" role="status">
            {trouble}
          </p>
        )}
        {way === 'work' && (
          <WorkPanel
            live={live}
            fresh={{ acts: acts.length === 0, all: acts.length === 0 && off.length === 0 }}
            onAct={act}
            onBack={() => setActs(acts.slice(0, -1))}
            onStart={() => {
              setActs([]);
              setOff([]);
            }}
          />
        )}
        {way === 'measure' && (
          <MeterPanel terminals={terminals} points={points} meter={live.meter} onMove={setPoints} />
        )}
        {way === 'break' && <ConductorsPanel terminals={terminals} off={off} onTurn={turn} />}
        <section>
          <h2>As it stands</h2>
          <ul class="readings" aria-live="polite">
            {way !== 'measure' && live.meter && <li>{reading(points, live.meter)}</li>}
            {way !== 'break' && off.length > 0 && <li>The conductor is off at {off.join(', ')}.</li>}
            {live.readings.map(({ item, label, state }) => (
              <li key={item}>
                <strong>{item}</strong> {label} <em>{state}</em>
              </li>
            ))}
          </ul>
        </section>
        {acts.length > 0 && <CircuitTiming ground={ground} circuit={circuit} scenario={scenario} />}
        <DrawingInWords ground={ground} circuit={circuit} />
      </div>
    </div>
  );
}
