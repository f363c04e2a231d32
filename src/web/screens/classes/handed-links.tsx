import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { PersonWithLink } from '../../../../shared/api-people.ts';
import { save } from '../../api.ts';
import { useAct } from '../../parts/act.ts';
import { Copy } from '../../parts/copy.tsx';
import { dayOf } from '../../parts/moment.ts';
import { Failure } from '../enter/sheet.tsx';
import { fileName } from './file-name.ts';

interface Props {
  readonly people: readonly PersonWithLink[];
  /** The class for whose slips they are; without one there are none to print. */
  readonly of?: { readonly id: string; readonly title: string };
}

/** Links to be handed over, once: they can't be shown again. */
export function HandedLinks({ people, of }: Props) {
  const act = useAct();
  const [printed, setPrinted] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  // They are what was asked for, and stand elsewhere than the button.
  useLayoutEffect(() => heading.current?.focus(), []);
  const print = ({ id, title }: NonNullable<Props['of']>): void =>
    act.run(async () => {
      await save('linkSlips', fileName(title, 'links.pdf'), {
        params: { class: id },
        body: { people: people.map(({ person }) => person.id) },
      });
      setPrinted(true);
    });
  const [first] = people;
  if (!first) return null;
  if (printed)
    return (
      <p role="status">
        The slips are among your downloads, with a name and a link each. The links that stood here no longer
        work: those on the slips do.
      </p>
    );
  return (
    <section>
      <h2 ref={heading} tabIndex={-1}>
        {people.length === 1 ? 'A link to hand over' : `${people.length} links to hand over`}
      </h2>
      <p>
        Each works once, until {dayOf(first.link.until)}, and lets in whoever opens it: give it to nobody
        else. It is shown only now; another one can be made at any time.
      </p>
      <div class="scrolls">
        <table class="roll folds">
          <thead>
            <tr>
              <th scope="col">Name</th>
              <th scope="col">Link</th>
              <th scope="col">
                <span class="away">Copy it</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {people.map(({ person, link }) => (
              <tr key={person.id}>
                <th scope="row">{person.name}</th>
                <td>
                  <code>{link.address}</code>
                </td>
                <td>
                  <Copy text={link.address} what={`the link of ${person.name}`} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="row">
        {of && (
          <button type="button" class="button main" disabled={act.busy} onClick={() => print(of)}>
            {act.busy ? 'Making them…' : 'Print slips instead (PDF)'}
          </button>
        )}
        {people.length > 1 && (
          <Copy
            text={people.map(({ person, link }) => `${person.name}\t${link.address}`).join('\n')}
            what="names and links"
            label="Copy all"
          />
        )}
      </p>
      <Failure words={act.failure} />
    </section>
  );
}
