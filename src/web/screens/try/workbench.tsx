import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Circuit } from '../../../../shared/circuit.ts';
import type { Act, Scenario } from '../../../../shared/scenario.ts';
import type { Outcome } from '../../../../shared/solution.ts';
import type { Live } from '../../engine/messages.ts';
import { asLongAsWanted } from '../../parts/as-long-as-wanted.ts';
import { Board } from '../../parts/board.tsx';
import { CircuitDrawing } from '../../parts/circuit-drawing.tsx';
import { CircuitTiming } from '../../parts/circuit-timing.tsx';
import { Drawing } from '../../parts/drawing.tsx';
import { DrawingInWords } from '../../parts/drawing-in-words.tsx';
import { NotRun } from '../../parts/not-run.tsx';
import { Readings } from '../../parts/readings.tsx';
import { SwitchRow } from '../../parts/switch-row.tsx';
import type { Touchable } from '../../parts/touchable.ts';
import type { Ground } from '../../start.ts';
import { view } from '../../view.ts';
import { words } from '../../words.ts';
import { ConductorsPanel } from './conductors-panel.tsx';
import { MeterPanel, type Points, reading, shown, touched } from './meter-panel.tsx';
import { WorkPanel } from './work-panel.tsx';

/** What a touch on the drawing does. */
const TOOLS = ['work', 'measure', 'break'] as const;
type Tool = (typeof TOOLS)[number];

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

/** What of the drawing an act is done to. */
const subjectOf = (act: Act): string | undefined =>
  'device' in act && !('point' in act) ? act.device : undefined;

function troubleInWords(outcome: Outcome): string | undefined {
  const { trouble } = words('try');
  switch (outcome.kind) {
    case 'steady':
      return undefined;
    case 'keeps-switching':
      return trouble.keepsSwitching(outcome.devices);
    case 'race':
      return trouble.race(outcome.devices);
    case 'undecided':
      return trouble.undecided;
    case 'protection-tripped':
      return outcome.devices.length > 0 ? trouble.tripped(outcome.devices) : trouble.unprotected;
  }
}

/** What a touch can reach, by what it does. */
function touchableFor(
  tool: Tool,
  live: Live,
  points: Points,
  off: readonly string[],
): Map<string, Touchable> {
  const { conductors, meter } = words('try');
  const touchable = new Map<string, Touchable>();
  if (tool === 'work') {
    for (const { act, words } of live.acts) {
      const subject = subjectOf(act);
      const at = act.kind === 'hold' || act.kind === 'free' ? (['coil'] as const) : (['contact'] as const);
      if (subject && !touchable.has(subject)) touchable.set(subject, { label: words, state: undefined, at });
    }
    return touchable;
  }
  for (const { item } of live.points.flat()) {
    if (tool === 'break')
      touchable.set(item, { label: item, state: off.includes(item) ? conductors.off : undefined });
    else {
      const lead = points.indexOf(item) + 1;
      touchable.set(item, { label: item, state: lead > 0 ? meter.onTerminal(lead) : undefined });
    }
  }
  return touchable;
}

/** One that isn't run: drawn it always is. */
function AtRest({ ground, circuit, why }: { ground: Ground; circuit: Circuit; why: Error }) {
  const w = words('try');
  return (
    <div class="question known">
      <div class="desk">
        <div class="title-block">
          <h2>{circuit.title ?? w.aCircuit}</h2>
          <p class="cell">{w.atRest}</p>
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

/** A circuit as it stands after what was done to it, or why it isn't run. */
function useLive(ground: Ground, circuit: Circuit, { acts, faults }: Scenario, points: Points) {
  const [live, setLive] = useState<Live>();
  const [failure, setFailure] = useState<Error>();
  const wanted = view.value;
  useEffect(() => {
    const meter = points[0] && points[1] ? { meter: points } : {};
    const take = (made: Live): void => {
      setLive(made);
      setFailure(undefined);
    };
    const working = ground.engine.call('live', { circuit, acts, faults, ...meter, view: wanted });
    return asLongAsWanted(working, take, setFailure);
  }, [ground, circuit, acts, faults, points, wanted]);
  return { live, failure };
}

/** What is being done to the circuit, and how it stands. */
function useBench(ground: Ground, circuit: Circuit) {
  const [acts, setActs] = useState<readonly Act[]>([]);
  const [off, setOff] = useState<readonly string[]>([]);
  const [points, setPoints] = useState(FREE);
  const [tool, setTool] = useState<Tool>('work');
  const scenario = useMemo<Scenario>(
    () => ({ start: 'live', faults: off.map((at) => ({ kind: 'loose', at })), acts: [...acts] }),
    [off, acts],
  );
  const { live, failure } = useLive(ground, circuit, scenario, points);
  const act = (done: Act): void => setActs([...acts, done].slice(-MOST_ACTS));
  const turn = (terminal: string): void =>
    setOff(
      off.includes(terminal)
        ? off.filter((other) => other !== terminal)
        : [...off, terminal].slice(-MOST_OFF),
    );
  const touch = (item: string): void => {
    if (tool === 'measure') setPoints(touched(points, item));
    else if (tool === 'break') turn(item);
    else {
      const found = live?.acts.find(({ act: one }) => subjectOf(one) === item);
      if (found) act(found.act);
    }
  };
  const back = (): void => setActs(acts.slice(0, -1));
  const begin = (): void => {
    setActs([]);
    setOff([]);
  };
  return {
    scenario,
    acts,
    off,
    points,
    tool,
    live,
    failure,
    act,
    turn,
    touch,
    back,
    begin,
    setPoints,
    setTool,
  };
}

type BenchProps = { bench: ReturnType<typeof useBench>; live: Live; circuit: Circuit };

function Desk({ bench: { tool, points, off, acts, touch, setTool }, live, circuit }: BenchProps) {
  const w = words('try');
  const face = shown(live.meter);
  return (
    <div class="desk">
      <div class="title-block">
        <h2>{circuit.title ?? w.aCircuit}</h2>
        <p class="cell">{w.done(acts.length)}</p>
      </div>
      <SwitchRow
        label={w.ways.label}
        options={TOOLS.map((value) => ({ value, text: w.ways[value] }))}
        chosen={tool}
        onChoose={setTool}
      />
      <Board>
        <Drawing
          drawn={live.drawn}
          touchable={touchableFor(tool, live, points, off)}
          onTouch={touch}
          broken={off}
          description={w.standing(live.readings)}
          {...(tool === 'work' ? {} : { points: live.points })}
          {...(face ? { meter: face } : {})}
        />
      </Board>
    </div>
  );
}

/** What a touch does, by ordinary controls. */
function Panel({ bench, live, circuit }: BenchProps) {
  const terminals = useMemo(() => terminalsOf(circuit), [circuit]);
  const { acts, off } = bench;
  switch (bench.tool) {
    case 'work':
      return (
        <WorkPanel
          live={live}
          fresh={{ acts: acts.length === 0, all: acts.length === 0 && off.length === 0 }}
          onAct={bench.act}
          onBack={bench.back}
          onStart={bench.begin}
        />
      );
    case 'measure':
      return (
        <MeterPanel terminals={terminals} points={bench.points} meter={live.meter} onMove={bench.setPoints} />
      );
    case 'break':
      return <ConductorsPanel terminals={terminals} off={off} onTurn={bench.turn} />;
  }
}

/** One circuit that can be worked: press, hold, break a conductor, measure. */
export function Workbench({ ground, circuit }: { ground: Ground; circuit: Circuit }) {
  const w = words('try');
  const bench = useBench(ground, circuit);
  const { live, failure, tool, acts, off } = bench;
  if (!live)
    return failure ? (
      <AtRest ground={ground} circuit={circuit} why={failure} />
    ) : (
      <p role="status">{w.switchingOn}</p>
    );
  const trouble = troubleInWords(live.outcome);
  return (
    <div class={`question known ${tool}`}>
      <Desk bench={bench} live={live} circuit={circuit} />
      <div class="talk">
        {failure && <NotRun error={failure} />}
        {trouble && (
          <p class="caution" role="status">
            {trouble}
          </p>
        )}
        <Panel bench={bench} live={live} circuit={circuit} />
        <section>
          <h2>{w.asItStands}</h2>
          <Readings live readings={live.readings}>
            {tool !== 'measure' && live.meter && <li>{reading(bench.points, live.meter)}</li>}
            {tool !== 'break' && off.length > 0 && <li>{w.conductors.areOffAt(off)}</li>}
          </Readings>
        </section>
        {acts.length > 0 && <CircuitTiming ground={ground} circuit={circuit} scenario={bench.scenario} />}
        <DrawingInWords ground={ground} circuit={circuit} />
      </div>
    </div>
  );
}
