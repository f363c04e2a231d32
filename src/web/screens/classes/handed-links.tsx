import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { PersonWithLink } from '../../../../shared/api-people.ts';
import { save } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Button } from '../../forms/button.tsx';
import { Failure } from '../../forms/failure.tsx';
import { Copy } from '../../parts/copy.tsx';
import { Schedule } from '../../parts/schedule.tsx';
import { words } from '../../words.ts';
import { fileName } from './file-name.ts';

interface Props {
  readonly people: readonly PersonWithLink[];
  /** The class for whose slips they are; without one there are none to print. */
  readonly of?: { readonly id: string; readonly title: string };
}

/** Links to be handed over, once: they can't be shown again. */
export function HandedLinks({ people, of }: Props) {
  const { links: w, common, files } = words('classes');
  const act = useAct();
  const [printed, setPrinted] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  // They are what was asked for, and stand elsewhere than the button.
  useLayoutEffect(() => heading.current?.focus(), []);
  const print = ({ id, title }: NonNullable<Props['of']>): void =>
    act.run(async () => {
      await save('linkSlips', fileName(title, files.links), {
        params: { class: id },
        body: { people: people.map(({ person }) => person.id) },
      });
      setPrinted(true);
    });
  const [first] = people;
  if (!first) return null;
  if (printed) return <p role="status">{w.printed}</p>;
  return (
    <section>
      <h2 ref={heading} tabIndex={-1}>
        {w.title(people.length)}
      </h2>
      <p>{w.means(first.link.until)}</p>
      <div class="scrolls">
        <Schedule
          class="roll folds"
          rows={people}
          keyOf={({ person }) => person.id}
          columns={[
            { title: w.name, head: true, cell: ({ person }) => person.name },
            { title: w.link, cell: ({ link }) => <code>{link.address}</code> },
            {
              title: w.copyIt,
              away: true,
              cell: ({ person, link }) => <Copy text={link.address} what={w.linkOf(person.name)} />,
            },
          ]}
        />
      </div>
      <p class="row">
        {of && (
          <Button kind="main" busy={act.busy} meanwhile={common.making} onPress={() => print(of)}>
            {w.print}
          </Button>
        )}
        {people.length > 1 && (
          <Copy
            text={people.map(({ person, link }) => `${person.name}\t${link.address}`).join('\n')}
            what={w.namesAndLinks}
            label={w.copyAll}
          />
        )}
      </p>
      <Failure words={act.failure} />
    </section>
  );
}
