import { useState } from 'preact/hooks';
import type { PersonWithLink } from '../../../../../shared/api-people.ts';
import type { Member } from '../../../../../shared/people.ts';
import { call, save } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Confirm } from '../../../forms/confirm.tsx';
import { Failure } from '../../../forms/failure.tsx';
import { Field } from '../../../forms/field.tsx';
import { Form } from '../../../forms/form.tsx';
import { problemOfName } from '../../../forms/typed.ts';
import { words } from '../../../words.ts';
import { fileName } from '../file-name.ts';
import { HandedLinks } from '../handed-links.tsx';
import type { PartProps } from '../part-props.ts';

/** What a tutor does for one learner: a new link, another name, signing out, taking out of the class. */
export function WithMember({ member, detail, onDetail }: PartProps & { member: Member }) {
  const { members: w, common, files } = words('classes');
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
      setSaid(common.nameChanged);
    });
  };
  const evidence = (): void =>
    act.run(() => save('evidencePdf', fileName(member.name, files.evidence), { params }));
  const endSessions = async (): Promise<void> => {
    const { ended } = await call('endSessionsOf', { params });
    setSaid(w.signedOut(ended));
  };
  return (
    <div class="with-member">
      {link && <HandedLinks key={link.link.address} people={[link]} of={detail} />}
      <Form onSend={rename}>
        <Field label={common.person} autocomplete="off" value={name} problem={problem} onValue={setName} />
        <p class="row">
          <button type="submit" class="button" disabled={act.busy || name === member.name}>
            {common.changeName}
          </button>
          <button type="button" class="button" disabled={act.busy} onClick={evidence}>
            {w.evidence}
          </button>
        </p>
      </Form>
      <Confirm
        ask={common.newLink}
        sure={common.makeLink}
        done={async () => setLink(await call('newLink', { params }))}
      >
        <p>{w.newLinkMeans(member.name)}</p>
      </Confirm>
      <Confirm ask={common.signOutEverywhereAsk} sure={common.signOutEverywhere} done={endSessions}>
        <p>{w.signOutMeans(member.name)}</p>
      </Confirm>
      <Confirm
        ask={w.takeOutAsk}
        sure={w.takeOut}
        done={async () =>
          onDetail(await call('removeMember', { params: { class: detail.id, person: member.id } }))
        }
      >
        <p>{w.takeOutMeans(member.name)}</p>
      </Confirm>
      <p role="status">{said}</p>
      <Failure words={act.failure} />
    </div>
  );
}
