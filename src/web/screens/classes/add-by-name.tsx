import { useId, useState } from 'preact/hooks';
import type { PersonWithLink } from '../../../../shared/api-people.ts';
import { beginsFormula, newName } from '../../../../shared/new-names.ts';
import { call } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Failure } from '../../forms/failure.tsx';
import { Form } from '../../forms/form.tsx';
import { words } from '../../words.ts';
import { HandedLinks } from './handed-links.tsx';
import type { PartProps } from './part-props.ts';

/** At most so many at once, as the contract has it. */
const MOST = 400;

/** Learners by their names, who then need a link each: for those who aren't to join by the code. */
export function AddByName({ detail, onDetail }: PartProps) {
  const { byName: w } = words('classes').joining;
  const id = useId();
  const [typed, setTyped] = useState('');
  const [looked, setLooked] = useState(false);
  const [made, setMade] = useState<readonly PersonWithLink[]>([]);
  const act = useAct();
  const names = typed
    .split('\n')
    .map((line) => line.trim().replace(/\s+/g, ' '))
    .filter((line) => line !== '');
  const bad = names.find((name) => !newName.safeParse(name).success);
  const problem =
    names.length === 0
      ? w.none
      : names.length > MOST
        ? w.tooMany({ most: MOST, count: names.length })
        : bad !== undefined
          ? (beginsFormula(bad, true) ? w.formula : w.tooLong)(bad.slice(0, 60))
          : undefined;
  const there = new Set(detail.members.map(({ name }) => name));
  const twice = names.filter((name, at) => there.has(name) || names.indexOf(name) !== at);
  const add = (): void => {
    setLooked(true);
    if (problem) return;
    act.run(async () => {
      const params = { class: detail.id };
      const { people } = await call('addLearners', { params, body: { names } });
      setMade(people);
      setTyped('');
      setLooked(false);
      onDetail(await call('class', { params }));
    });
  };
  if (detail.endedAt !== null) return <p>{w.ended}</p>;
  const shown = looked ? problem : undefined;
  return (
    <>
      <HandedLinks key={made[0]?.person.id} people={made} of={detail} />
      <section>
        <h2>{w.title}</h2>
        <Form onSend={add}>
          <div class="entry">
            <label for={id}>{w.names}</label>
            <p class="note" id={`${id}-note`}>
              {w.note}
            </p>
            <div class="entered">
              <textarea
                id={id}
                rows={8}
                autocomplete="off"
                spellcheck={false}
                value={typed}
                aria-invalid={shown ? true : undefined}
                aria-describedby={`${id}-note${shown ? ` ${id}-problem` : ''}`}
                onInput={({ currentTarget }) => setTyped(currentTarget.value)}
              />
            </div>
            {shown && (
              <p class="amiss" id={`${id}-problem`}>
                {shown}
              </p>
            )}
          </div>
          {twice.length > 0 && <p role="status">{w.thereTwice([...new Set(twice)].slice(0, 5))}</p>}
          <Failure words={act.failure} />
          <p>
            <button type="submit" class="button main" disabled={act.busy}>
              {act.busy ? w.adding : names.length > 1 ? w.addSeveral(names.length) : w.add}
            </button>
          </p>
        </Form>
      </section>
    </>
  );
}
