import { useState } from 'preact/hooks';
import type { PersonWithLink } from '../../../../shared/api-people.ts';
import { beginsFormula, newName } from '../../../../shared/new-names.ts';
import { call } from '../../api.ts';
import { Area } from '../../forms/area.tsx';
import { Button } from '../../forms/button.tsx';
import { Failure } from '../../forms/failure.tsx';
import { Form, useForm } from '../../forms/form.tsx';
import { words } from '../../words.ts';
import { HandedLinks } from './handed-links.tsx';
import type { PartProps } from './part-props.ts';

/** At most so many at once, as the contract has it. */
const MOST = 400;

const namesIn = (typed: string): string[] =>
  typed
    .split('\n')
    .map((line) => line.trim().replace(/\s+/g, ' '))
    .filter((line) => line !== '');

function problemOf(names: readonly string[]): string | undefined {
  const { byName: w } = words('classes').joining;
  if (names.length === 0) return w.none;
  if (names.length > MOST) return w.tooMany({ most: MOST, count: names.length });
  const bad = names.find((name) => !newName.safeParse(name).success);
  return bad === undefined ? undefined : (beginsFormula(bad, true) ? w.formula : w.tooLong)(bad.slice(0, 60));
}

/** Learners by their names, who then need a link each: for those who aren't to join by the code. */
export function AddByName({ detail, onDetail }: PartProps) {
  const { byName: w } = words('classes').joining;
  const [typed, setTyped] = useState('');
  const [made, setMade] = useState<readonly PersonWithLink[]>([]);
  const names = namesIn(typed);
  const { act, told, ...form } = useForm({ names: problemOf(names) });
  const there = new Set(detail.members.map(({ name }) => name));
  const twice = names.filter((name, at) => there.has(name) || names.indexOf(name) !== at);
  const add = async (): Promise<void> => {
    const params = { class: detail.id };
    const { people } = await call('addLearners', { params, body: { names } });
    setMade(people);
    setTyped('');
    form.anew();
    onDetail(await call('class', { params }));
  };
  if (detail.endedAt !== null) return <p>{w.ended}</p>;
  return (
    <>
      <HandedLinks key={made[0]?.person.id} people={made} of={detail} />
      <section>
        <h2>{w.title}</h2>
        <Form onSend={() => form.send(add)}>
          <Area
            label={w.names}
            note={w.note}
            problem={told.names}
            rows={8}
            value={typed}
            onValue={setTyped}
          />
          {twice.length > 0 && <p role="status">{w.thereTwice([...new Set(twice)].slice(0, 5))}</p>}
          <Failure words={act.failure} />
          <p>
            <Button kind="main" busy={act.busy} meanwhile={w.adding}>
              {names.length > 1 ? w.addSeveral(names.length) : w.add}
            </Button>
          </p>
        </Form>
      </section>
    </>
  );
}
