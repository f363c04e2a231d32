import { useId, useState } from 'preact/hooks';
import type { RosterIn, RosterResult } from '../../../../../shared/api-people.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Failure } from '../../../forms/failure.tsx';
import { Field } from '../../../forms/field.tsx';
import { set, words } from '../../../words.ts';
import type { PartProps } from '../part-props.ts';
import { LookedAt } from './looked-at.tsx';
import { rosterOf } from './read-files.ts';

/** Whether the export has several classes, and it has to be said which one is meant. */
const asksWhich = (result: RosterResult | undefined): boolean =>
  result?.result === 'mistakes' && result.problems.some(({ file }) => file === 'classes.csv');

/** A roster into the class: looked at first, then taken over. */
export function TakeRoster({ detail, onDetail }: PartProps) {
  const w = words('classes').roster.take;
  const id = useId();
  const [roster, setRoster] = useState<RosterIn>();
  const [which, setWhich] = useState('');
  const [result, setResult] = useState<RosterResult>();
  const act = useAct();
  const params = { class: detail.id };
  const ask = async (given: RosterIn, look: 'yes' | 'no'): Promise<void> => {
    const body =
      given.format === 'oneroster' && which.trim() !== '' ? { ...given, class: which.trim() } : given;
    const told = await call('takeRoster', { params, query: { look }, body });
    setResult(told);
    if (told.result === 'taken' && told.kept) onDetail(await call('class', { params }));
  };
  const choose = (files: readonly File[]): void => {
    setResult(undefined);
    setRoster(undefined);
    if (files.length === 0) return;
    act.run(async () => {
      const given = await rosterOf(files);
      setRoster(given);
      await ask(given, 'yes');
    });
  };
  const looked = result?.result === 'taken' && !result.kept && result.lines.length > 0;
  return (
    <section>
      <h2>{w.title}</h2>
      <p>{set(w.means, { code: (text) => <code>{text}</code> })}</p>
      <div class="entry">
        <label for={id}>{w.files}</label>
        <div class="entered">
          <input
            id={id}
            type="file"
            multiple
            accept=".csv,.zip,text/csv,application/zip"
            disabled={act.busy}
            onChange={({ currentTarget }) => choose([...(currentTarget.files ?? [])])}
          />
        </div>
      </div>
      {act.busy && <p role="status">{w.reading}</p>}
      <Failure words={act.failure} />
      <div role="status">{result && <LookedAt result={result} />}</div>
      {roster && (asksWhich(result) || which !== '') && (
        <>
          <Field
            label={w.which}
            kind="exact"
            autocomplete="off"
            value={which}
            note={w.whichNote}
            onValue={setWhich}
          />
          <p>
            <button
              type="button"
              class="button"
              disabled={act.busy}
              onClick={() => act.run(() => ask(roster, 'yes'))}
            >
              {w.lookAgain}
            </button>
          </p>
        </>
      )}
      {roster && looked && (
        <p>
          <button
            type="button"
            class="button main"
            disabled={act.busy}
            onClick={() => act.run(() => ask(roster, 'no'))}
          >
            {act.busy ? w.takingOver : w.takeOver}
          </button>
        </p>
      )}
    </section>
  );
}
