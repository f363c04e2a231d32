import type { Bank, Topic } from '../../../../../shared/bank.ts';
import { written } from '../../../parts/written.tsx';
import { set, words } from '../../../words.ts';

interface Props {
  readonly bank: Bank;
  readonly chosen: readonly string[];
  readonly onChange: (skills: readonly string[]) => void;
}

function OfTopic({ topic, chosen, onChange }: { topic: Topic } & Omit<Props, 'bank'>) {
  const own = topic.skills.map(({ id }) => id);
  const count = own.filter((id) => chosen.includes(id)).length;
  const without = chosen.filter((id) => !own.includes(id));
  return (
    <div class="topic">
      <label class="tick whole">
        <input
          type="checkbox"
          checked={count === own.length}
          // Some of them, but not all.
          indeterminate={count > 0 && count < own.length}
          onChange={() => onChange(count === own.length ? without : [...without, ...own])}
        />
        <span {...written(topic)}>{topic.title}</span>
      </label>
      {topic.skills.length > 1 && (
        <div class="of-topic">
          {topic.skills.map(({ id, title }) => (
            <label key={id} class="tick">
              <input
                type="checkbox"
                checked={chosen.includes(id)}
                onChange={({ currentTarget }) =>
                  onChange(currentTarget.checked ? [...chosen, id] : chosen.filter((each) => each !== id))
                }
              />
              <span {...written(topic)}>{title}</span>
            </label>
          ))}
        </div>
      )}
    </div>
  );
}

/** Topics of the banks with their skills, to be ticked: a topic ticks all of its skills. */
export function ChooseSkills({ bank, chosen, onChange }: Props) {
  const { form: w } = words('sets');
  // In the banks' order, whatever was ticked first.
  const inOrder = bank.topics.flatMap(({ skills }) => skills.map(({ id }) => id));
  const change = (skills: readonly string[]): void => onChange(inOrder.filter((id) => skills.includes(id)));
  return (
    <fieldset class="topics">
      <legend>
        {set(chosen.length === 0 ? w.asks : w.asksSkills(chosen.length), {
          of: (text) => <span class="of">{text}</span>,
        })}
      </legend>
      {bank.topics.map((topic) => (
        <OfTopic key={topic.id} topic={topic} chosen={chosen} onChange={change} />
      ))}
    </fieldset>
  );
}
