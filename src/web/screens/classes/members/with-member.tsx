import type { Member } from '../../../../../shared/people.ts';
import { call, save } from '../../../api.ts';
import { Confirm } from '../../../forms/confirm.tsx';
import { words } from '../../../words.ts';
import { fileName } from '../file-name.ts';
import type { PartProps } from '../part-props.ts';
import { PersonForm } from '../person-form.tsx';

/** What a tutor does for one learner of the class. */
export function WithMember({ member, detail, onDetail }: PartProps & { member: Member }) {
  const { members: w, files } = words('classes');
  const { id: person, name } = member;
  const params = { class: detail.id };
  return (
    <PersonForm
      person={member}
      of={detail}
      file={{
        label: w.evidence,
        save: () => save('evidencePdf', fileName(name, files.evidence), { params: { person } }),
      }}
      means={{ newLink: w.newLinkMeans(name), signOut: w.signOutMeans(name), signedOut: w.signedOut }}
      onChanged={async () => onDetail(await call('class', { params }))}
      after={
        <Confirm
          ask={w.takeOutAsk}
          sure={w.takeOut}
          done={async () => onDetail(await call('removeMember', { params: { ...params, person } }))}
        >
          <p>{w.takeOutMeans(name)}</p>
        </Confirm>
      }
    />
  );
}
