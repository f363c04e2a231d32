import type { Settings } from '../../../../shared/settings.ts';
import { NEW_A_DAY } from '../../../memory/index.ts';
import type { Progress as Report } from '../../engine/messages.ts';
import { words } from '../../words.ts';

const dateText = (at: number | null): string =>
  at === null ? '' : new Date(at - new Date(at).getTimezoneOffset() * 60_000).toISOString().slice(0, 10);

/** What the learner sets: by when, how much time, and how fast new things come. */
export function Wishes({
  settings,
  onChange,
}: {
  settings: Settings;
  onChange: (settings: Partial<Settings>) => void;
}) {
  const { plan } = words('progress');
  return (
    <form class="wishes" onSubmit={(event) => event.preventDefault()}>
      <label>
        {plan.assessmentOn}
        <input
          type="date"
          value={dateText(settings.assessmentAt)}
          onChange={({ currentTarget: { value } }) => {
            // At nine in the morning of that day, where the learner is.
            onChange({ assessmentAt: value ? new Date(`${value}T09:00`).getTime() : null });
          }}
        />
      </label>
      <label>
        {plan.minutes}
        <input
          type="number"
          min={1}
          max={600}
          value={settings.minutesADay ?? ''}
          onChange={({ currentTarget: { value } }) => {
            const minutes = Math.round(Number(value));
            onChange({ minutesADay: minutes >= 1 && minutes <= 600 ? minutes : null });
          }}
        />
      </label>
      <label>
        {plan.newSkills}
        <input
          type="number"
          min={0}
          max={50}
          placeholder={String(NEW_A_DAY)}
          aria-describedby="new-skills"
          value={settings.newSkillsADay ?? ''}
          onChange={({ currentTarget: { value } }) => {
            const count = Math.round(Number(value));
            onChange({ newSkillsADay: value !== '' && count >= 0 && count <= 50 ? count : null });
          }}
        />
      </label>
      <p id="new-skills">{plan.newSkillsNote(NEW_A_DAY)}</p>
    </form>
  );
}

/** Skills that are named one by one; the rest are counted. */
const NAMED = 8;

/** What the days until the assessment hold, and what will not be ready. */
export function Plan({ report, now }: { report: Report; now: number }) {
  const { plan } = report;
  const { moments, parts } = words('first');
  const { plan: w } = words('progress');
  if (!plan) return <p>{w.notYet}</p>;
  if ('problem' in plan) return <p>{plan.problem}</p>;
  const busy = plan.days.filter(({ questions }) => questions > 0);
  return (
    <>
      <p>
        {plan.notReady.length === 0
          ? w.allReady(parts.share(plan.average))
          : w.expected(parts.share(plan.average))}
      </p>
      {plan.notReady.length > 0 && (
        <>
          <p>{w.notReady}</p>
          <ul>
            {plan.notReady.slice(0, NAMED).map(({ skill, title, share }) => (
              <li key={skill}>
                {share > 0 ? w.weak({ title, share: parts.share(share) }) : w.noTime(title)}
              </li>
            ))}
            {plan.notReady.length > NAMED && <li>{w.more(plan.notReady.length - NAMED)}</li>}
          </ul>
        </>
      )}
      <ol class="days">
        {busy.slice(0, 14).map(({ at, questions }) => (
          <li key={at}>
            {at - now < 43_200_000 ? w.today(questions) : w.onDay({ day: moments.weekday(at), questions })}
          </li>
        ))}
      </ol>
    </>
  );
}
