import { useState } from 'preact/hooks';
import type { PersonWithLink } from '../../../../../shared/api-people.ts';
import type { Member } from '../../../../../shared/people.ts';
import { call, save } from '../../../api.ts';
import { useAct } from '../../../parts/act.ts';
import { Field, Form } from '../../../parts/field.tsx';
import { problemOfName } from '../../enter/names.ts';
import { Failure } from '../../enter/sheet.tsx';
import type { PartProps } from '../class.tsx';
import { fileName } from '../file-name.ts';
import { HandedLinks } from '../handed-links.tsx';
import { Sure } from '../sure.tsx';

/** What a tutor does for one learner: a new link, another name, signing out, taking out of the class. */
export function WithMember({ member, detail, onDetail }: PartProps & { member: Member }) {
  const [name, setName] = useState(member.name);
  const [link, setLink] = useState<PersonWithLink>();
  const [said, setSaid] = useState('');
  const act = useAct();
  const params = { person: member.id };
  const fetchClass = async (): Promise<void> =>
    onDetail(await call('class', { params: { class: detail.id } }));
  const problem = problemOfName(name);
  const rename = (): void => {
    if (problem) return;
    act.run(async () => {
      await call('renamePerson', { params, body: { name: name.trim() } });
      await fetchClass();
      setSaid('The name is changed.');
    });
  };
  const evidence = (): void =>
    act.run(() => save('evidencePdf', fileName(member.name, 'evidence.pdf'), { params }));
  const endSessions = async (): Promise<void> => {
    const { ended } = await call('endSessionsOf', { params });
    setSaid(
      ended === 0
        ? 'Was signed in nowhere.'
        : `Signed out in ${ended === 1 ? '1 place' : `${ended} places`}.`,
    );
  };
  return (
    <div class="with-member">
      {link && <HandedLinks key={link.link.address} people={[link]} of={detail} />}
      <Form onSend={rename}>
        <Field label="Name" autocomplete="off" value={name} problem={problem} onValue={setName} />
        <p class="row">
          <button type="submit" class="button" disabled={act.busy || name === member.name}>
            Change the name
          </button>
          <button type="button" class="button" disabled={act.busy} onClick={evidence}>
            What was proven (PDF)
          </button>
        </p>
      </Form>
      <Sure
        ask="A new link…"
        sure="Make a link"
        done={async () => setLink(await call('newLink', { params }))}
      >
        <p>
          For a forgotten password, or another device. When it is used, {member.name} is signed out elsewhere
          and chooses a password anew. A link made before no longer works.
        </p>
      </Sure>
      <Sure ask="Sign out everywhere…" sure="Sign out everywhere" done={endSessions}>
        <p>
          For a lost device. {member.name} signs in again with the password, or with a new link; what waits on
          a device is kept there until then.
        </p>
      </Sure>
      <Sure
        ask="Take out of the class…"
        sure="Take out"
        done={async () =>
          onDetail(await call('removeMember', { params: { class: detail.id, person: member.id } }))
        }
      >
        <p>
          {member.name} no longer sees this class and its homework. The person stays, with all that was
          practised.
        </p>
      </Sure>
      <p role="status">{said}</p>
      <Failure words={act.failure} />
    </div>
  );
}
