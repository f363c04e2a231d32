import './progress.css';
import { useEffect, useState } from 'preact/hooks';
import type { AnswerLine } from '../../../../shared/practice.ts';
import type { Settings } from '../../../../shared/settings.ts';
import type { Progress as Report, SkillProgress } from '../../engine/messages.ts';
import { answers, coming, settings as kept } from '../../learner.ts';
import type { ScreenProps } from '../../parts/loaded.tsx';
import { dayOf } from '../../parts/moment.ts';
import { whenInWords } from '../../when.ts';
import { wishesOf } from '../../wishes.ts';
import { words } from '../../words.ts';
import { OwnData } from './own-data.tsx';
import { Plan, Wishes } from './plan.tsx';

const STANDING: Readonly<Record<SkillProgress['standing'], string>> = {
  held: 'held',
  fading: 'fading',
  begun: 'begun',
  open: 'can be begun',
  shut: 'opens later',
};

function Chance({ chance }: { chance: number }) {
  const percent = Math.round(100 * chance);
  return (
    <span class="chance">
      <span class="line" aria-hidden="true">
        <span style={{ width: `${percent}%` }} />
      </span>{' '}
      {percent} %
    </span>
  );
}

function Skills({ report, now }: { report: Report; now: number }) {
  const begun = report.skills.filter(({ standing }) => standing !== 'shut' && standing !== 'open');
  const later = report.skills.filter(({ standing }) => standing === 'shut' || standing === 'open');
  return (
    <>
      {begun.length === 0 ? (
        <p>
          Nothing yet. <a href="#/practise">Answer the first question.</a>
        </p>
      ) : (
        <table class="strengths">
          <caption>What you hold now</caption>
          <thead>
            <tr>
              <th scope="col">Skill</th>
              <th scope="col">Stands</th>
              <th scope="col">Right, if asked now</th>
              <th scope="col">Comes back</th>
            </tr>
          </thead>
          <tbody>
            {begun.map(({ skill, title, standing, chance, due }) => (
              <tr key={skill} class={standing}>
                <th scope="row">{title}</th>
                <td>{STANDING[standing]}</td>
                <td>{chance === null ? 'not proven yet' : <Chance chance={chance} />}</td>
                <td>{due === null ? '–' : whenInWords(due, now)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {later.length > 0 && (
        <details class="in-words">
          <summary>{later.length === 1 ? '1 skill' : `${later.length} skills`} not begun</summary>
          <ul>
            {later.map(({ skill, title, standing }) => (
              <li key={skill}>
                {title} ({STANDING[standing]})
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

/** Of so many answers, the latest, wrong ideas are counted: older ones may be overcome. */
const LATEST = 200;

/** Wrong ideas that alone explained an answer, the commonest first. */
function ideasOf(lines: readonly AnswerLine[]): { idea: string; advice: string; times: number }[] {
  const found = new Map<string, { idea: string; advice: string; times: number }>();
  for (const { idea } of lines.slice(-LATEST))
    if (idea) found.set(idea.id, { ...idea, times: (found.get(idea.id)?.times ?? 0) + 1 });
  return [...found.values()].sort((one, other) => other.times - one.times).slice(0, 3);
}

function Ideas() {
  const ideas = ideasOf(answers.value);
  if (ideas.length === 0) return null;
  return (
    <section>
      <h2>Ideas to be rid of</h2>
      <ul>
        {ideas.map(({ idea, advice, times }) => (
          <li key={idea}>
            {idea} {advice} ({times === 1 ? 'once' : `${times} times`})
          </li>
        ))}
      </ul>
    </section>
  );
}

function History() {
  const days = new Map<string, { right: number; all: number }>();
  for (const { at, correct } of answers.value) {
    const day = dayOf(at);
    const before = days.get(day) ?? { right: 0, all: 0 };
    days.set(day, { right: before.right + (correct ? 1 : 0), all: before.all + 1 });
  }
  if (days.size === 0) return null;
  return (
    <section>
      <h2>History</h2>
      <ul class="history">
        {[...days]
          .reverse()
          .slice(0, 14)
          .map(([day, { right, all }]) => (
            <li key={day}>
              {day}: {right} of {all} right
            </li>
          ))}
      </ul>
    </section>
  );
}

/** What is held, what comes back when, and the plan towards the assessment. */
export function Progress({ ground }: ScreenProps) {
  const [report, setReport] = useState<Report>();
  const [now] = useState(Date.now);
  const settings = kept.value;
  const all = answers.value;
  useEffect(() => {
    const { placement, newSkillsADay: newADay } = settings;
    const wishes = wishesOf(settings);
    ground.engine.call('progress', { at: now, wishes, placement, newADay }).then(setReport, () => undefined);
  }, [ground, settings, all, now]);
  if (!report) return <p role="status">Working out how you stand…</p>;
  const change = (wanted: Partial<Settings>): void => {
    ground.learner.change(wanted).catch(() => undefined);
  };
  return (
    <div class="progress">
      <h1>Progress</h1>
      <Skills report={report} now={now} />
      <section>
        <h2>Towards the assessment</h2>
        <Wishes settings={settings} onChange={change} />
        <Plan report={report} now={now} />
      </section>
      {coming.value?.what === 'lines' && (
        <p role="status">{words('first').frame.coming.lines(coming.value)}</p>
      )}
      <Ideas />
      <History />
      <OwnData ground={ground} />
    </div>
  );
}
