import './progress.css';
import { useEffect, useState } from 'preact/hooks';
import type { AnswerLine } from '../../../../shared/practice.ts';
import type { Settings } from '../../../../shared/settings.ts';
import { comingBack } from '../../../words/coming-back.ts';
import type { Progress as Report } from '../../engine/messages.ts';
import { answers, coming, settings as kept } from '../../learner.ts';
import { dayOf } from '../../moments.ts';
import type { ScreenProps } from '../../parts/loaded.tsx';
import { Schedule } from '../../parts/schedule.tsx';
import { SkillTitle } from '../../parts/written.tsx';
import { wishesOf } from '../../wishes.ts';
import { set, words } from '../../words.ts';
import { OwnData } from './own-data.tsx';
import { Plan, Wishes } from './plan.tsx';

function Chance({ chance }: { chance: number }) {
  const percent = Math.round(100 * chance);
  return (
    <span class="chance">
      <span class="line" aria-hidden="true">
        <span style={{ width: `${percent}%` }} />
      </span>{' '}
      {words('first').parts.share(chance)}
    </span>
  );
}

/** So many hours are told as hours; then it is tomorrow. */
const HOURS = 20;

/** When something comes back that is due in so many milliseconds. */
function whenDue(left: number): string {
  const [unit, count] = comingBack(left, HOURS);
  return words('progress').skills.comingBack[unit](count);
}

function Skills({ report, now }: { report: Report; now: number }) {
  const { skills: w } = words('progress');
  const begun = report.skills.filter(({ standing }) => standing !== 'shut' && standing !== 'open');
  const later = report.skills.filter(({ standing }) => standing === 'shut' || standing === 'open');
  return (
    <>
      {begun.length === 0 ? (
        <p>{set(w.nothingYet, { practise: (text) => <a href="#/practise">{text}</a> })}</p>
      ) : (
        <Schedule
          class="strengths"
          caption={w.caption}
          rows={begun}
          keyOf={({ skill }) => skill}
          like={({ standing }) => standing}
          columns={[
            { title: w.skill, head: true, cell: SkillTitle },
            { title: w.stands, cell: ({ standing }) => w.standing[standing] },
            {
              title: w.chance,
              cell: ({ chance }) => (chance === null ? w.notProven : <Chance chance={chance} />),
            },
            { title: w.comesBack, cell: ({ due }) => (due === null ? '–' : whenDue(due - now)) },
          ]}
        />
      )}
      {later.length > 0 && (
        <details class="in-words">
          <summary>{w.notBegun(later.length)}</summary>
          <ul>
            {later.map(({ skill, title, standing }) => (
              <li key={skill}>
                {set(w.withStanding({ title: '{title}', standing: w.standing[standing] }), {
                  title: <SkillTitle skill={skill} title={title} />,
                })}
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
function ideasOf(lines: readonly AnswerLine[]): { id: string; times: number }[] {
  const found = new Map<string, number>();
  for (const { idea } of lines.slice(-LATEST)) if (idea !== null) found.set(idea, (found.get(idea) ?? 0) + 1);
  return [...found]
    .map(([id, times]) => ({ id, times }))
    .sort((one, other) => other.times - one.times)
    .slice(0, 3);
}

function Ideas() {
  const { ideas: w } = words('progress');
  const known = words('ideas');
  const ideas = ideasOf(answers.value).flatMap(({ id, times }) =>
    id in known ? [{ ...known[id as keyof typeof known], times }] : [],
  );
  if (ideas.length === 0) return null;
  return (
    <section>
      <h2>{w.title}</h2>
      <ul>
        {ideas.map((idea) => (
          <li key={idea.idea}>{w.idea(idea)}</li>
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
  const { history } = words('progress');
  return (
    <section>
      <h2>{history.title}</h2>
      <ul class="history">
        {[...days]
          .reverse()
          .slice(0, 14)
          .map(([day, { right, all }]) => (
            <li key={day}>{history.day({ day, right, all })}</li>
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
  const w = words('progress');
  if (!report) return <p role="status">{w.underWay}</p>;
  const change = (wanted: Partial<Settings>): void => {
    ground.learner.change(wanted).catch(() => undefined);
  };
  return (
    <div class="progress">
      <h1>{w.title}</h1>
      <Skills report={report} now={now} />
      <section>
        <h2>{w.plan.title}</h2>
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
