import { useId, useState } from 'preact/hooks';
import type { RosterIn, RosterResult } from '../../../../../shared/api-people.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Button } from '../../../forms/button.tsx';
import { Entry } from '../../../forms/entry.tsx';
import { Failure } from '../../../forms/failure.tsx';
import { Field } from '../../../forms/field.tsx';
import { set, words } from '../../../words.ts';
import type { PartProps } from '../part-props.ts';
import { LookedAt } from './looked-at.tsx';
import { rosterOf } from './read-files.ts';

/** Whether the export has several classes, and it has to be said which one is meant. */
const asksWhich = (result: RosterResult | undefined): boolean =>
  result?.result === 'mistakes' && result.problems.some(({ file }) => file === 'classes.csv');

function Files({ busy, onChoose }: { busy: boolean; onChoose: (files: readonly File[]) => void }) {
  const id = useId();
  return (
    <Entry id={id} label={words('classes').roster.take.files}>
      <input
        id={id}
        type="file"
        multiple
        accept=".csv,.zip,text/csv,application/zip"
        disabled={busy}
        onChange={({ currentTarget }) => onChoose([...(currentTarget.files ?? [])])}
      />
    </Entry>
  );
}

/** Which class of the export is meant, by its code there. */
function WhichClass({
  which,
  busy,
  onWhich,
  onLook,
}: {
  which: string;
  busy: boolean;
  onWhich: (which: string) => void;
  onLook: () => void;
}) {
  const w = words('classes').roster.take;
  return (
    <>
      <Field
        label={w.which}
        kind="exact"
        autocomplete="off"
        value={which}
        note={w.whichNote}
        onValue={onWhich}
      />
      <p>
        <Button busy={busy} onPress={onLook}>
          {w.lookAgain}
        </Button>
      </p>
    </>
  );
}

/** A roster into the class: looked at first, then taken over. */
export function TakeRoster({ detail, onDetail }: PartProps) {
  const w = words('classes').roster.take;
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
      <Files busy={act.busy} onChoose={choose} />
      {act.busy && <p role="status">{w.reading}</p>}
      <Failure words={act.failure} />
      <div role="status">{result && <LookedAt result={result} />}</div>
      {roster && (asksWhich(result) || which !== '') && (
        <WhichClass
          which={which}
          busy={act.busy}
          onWhich={setWhich}
          onLook={() => act.run(() => ask(roster, 'yes'))}
        />
      )}
      {roster && looked && (
        <p>
          <Button
            kind="main"
            busy={act.busy}
            meanwhile={w.takingOver}
            onPress={() => act.run(() => ask(roster, 'no'))}
          >
            {w.takeOver}
          </Button>
        </p>
      )}
    </section>
  );
}
