import { MOST_PLACING } from '../../../practice/index.ts';
import type { Session } from './session.ts';

/** The two ways to begin, on the first visit; the first one is under way already. */
export function WhereToBegin({ session }: { session: Session }) {
  return (
    <fieldset class="begin" aria-label="Where to begin">
      <button type="button" class="way" aria-pressed="true">
        Begin at the beginning
      </button>
      <button type="button" class="way" aria-pressed="false" onClick={() => session.startPlacing()}>
        Find where to begin <span class="of">{MOST_PLACING} questions at most</span>
      </button>
    </fieldset>
  );
}

/** How far a placement has come, and the way out of it. */
export function PlacingUnderWay({ session, asked }: { session: Session; asked: number }) {
  return (
    <div class="begin placing">
      <p>
        Finding where to begin: question {asked + 1} of {MOST_PLACING} at most
      </p>
      <button type="button" class="button plain" onClick={() => session.finishPlacing()}>
        Enough
      </button>
    </div>
  );
}

/** That only one skill is put, and the way out of it. */
export function OneSkill() {
  return (
    <div class="begin placing">
      <p>Only this skill, until you choose otherwise</p>
      <button
        type="button"
        class="button plain"
        onClick={() => {
          location.hash = '#/practise';
        }}
      >
        All skills
      </button>
    </div>
  );
}

/** What a placement found. */
export function Placed({ session, known, of }: { session: Session; known: readonly string[]; of: number }) {
  return (
    <div class="opening" role="status">
      <h1>{known.length === 0 ? 'You begin at the beginning' : `${known.length} of ${of} skills known`}</h1>
      {known.length > 0 && (
        <>
          <p>These count as known and come back within days, to be shown on a circuit each:</p>
          <ul class="found">
            {known.map((title) => (
              <li key={title}>{title}</li>
            ))}
          </ul>
        </>
      )}
      <button type="button" class="button main" onClick={() => session.next()}>
        Practise
      </button>
    </div>
  );
}
