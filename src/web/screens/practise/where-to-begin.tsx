import type { BankSkill } from '../../../../shared/bank.ts';
import { MOST_PLACING } from '../../../practice/index.ts';
import { skillWritten } from '../../parts/written.tsx';
import { set, words } from '../../words.ts';
import type { Session } from './session.ts';

/** The two ways to begin, on the first visit; the first one is under way already. */
export function WhereToBegin({ session }: { session: Session }) {
  const { begin } = words('first').practise;
  return (
    <fieldset class="begin" aria-label={begin.label}>
      <button type="button" class="way" aria-pressed="true">
        {begin.atTheBeginning}
      </button>
      <button type="button" class="way" aria-pressed="false" onClick={() => session.startPlacing()}>
        {set(begin.find(MOST_PLACING), { of: (text) => <span class="of">{text}</span> })}
      </button>
    </fieldset>
  );
}

/** How far a placement has come, and the way out of it. */
export function PlacingUnderWay({ session, asked }: { session: Session; asked: number }) {
  const { begin } = words('first').practise;
  return (
    <div class="begin placing">
      <p>{begin.finding({ number: asked + 1, most: MOST_PLACING })}</p>
      <button type="button" class="button plain" onClick={() => session.finishPlacing()}>
        {begin.enough}
      </button>
    </div>
  );
}

/** That only one skill is put, and the way out of it. */
export function OneSkill() {
  const { begin } = words('first').practise;
  return (
    <div class="begin placing">
      <p>{begin.oneSkill}</p>
      <button
        type="button"
        class="button plain"
        onClick={() => {
          location.hash = '#/practise';
        }}
      >
        {begin.allSkills}
      </button>
    </div>
  );
}

/** What a placement found. */
export function Placed({
  session,
  known,
  of,
}: {
  session: Session;
  known: readonly BankSkill[];
  of: number;
}) {
  const { begin } = words('first').practise;
  return (
    <div class="opening" role="status">
      <h1>{known.length === 0 ? begin.noneKnown : begin.known({ known: known.length, of })}</h1>
      {known.length > 0 && (
        <>
          <p>{begin.countAsKnown}</p>
          <ul class="found">
            {known.map(({ id, title }) => (
              <li key={id} {...skillWritten(id)}>
                {title}
              </li>
            ))}
          </ul>
        </>
      )}
      <button type="button" class="button main" onClick={() => session.next()}>
        {begin.practise}
      </button>
    </div>
  );
}
