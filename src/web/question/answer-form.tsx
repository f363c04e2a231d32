import type { Asked, AskedItem, ToldPart } from '../../../shared/question.ts';
import { set, unbroken, words } from '../words.ts';
import { NOTHING } from './answer.ts';

interface Props {
  readonly asked: Asked;
  readonly chosen: ReadonlyMap<string, string>;
  readonly onChoose: (item: string, state: string) => void;
  /** Once it has been marked: by item. */
  readonly parts?: ReadonlyMap<string, ToldPart>;
}

interface ItemProps {
  readonly item: AskedItem;
  readonly chosen: string | undefined;
  readonly onChoose: (state: string) => void;
}

/** A designation stands out of its label: `-H1 "Fan healthy"`. */
function Label({ item: { named, label } }: { item: AskedItem }) {
  if (named?.text === undefined) return <>{unbroken(named?.label ?? label)}</>;
  return (
    <>
      {unbroken(named.name)} <span class="of">{named.text}</span>
    </>
  );
}

function Choices({ item, chosen, onChoose }: ItemProps) {
  const long = item.choices.some((choice) => choice.length > 12);
  return (
    <fieldset class={long ? 'item long' : 'item'}>
      <legend>
        <Label item={item} />
      </legend>
      <div class="choices">
        {item.values.map((state, at) => (
          <label key={state} class="choice" data-state={state}>
            <input
              type="radio"
              name={item.item}
              value={state}
              checked={chosen === state}
              onChange={() => onChoose(state)}
            />
            <span>{unbroken(item.choices[at] ?? '')}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

function Volts({ item, chosen, onChoose }: ItemProps) {
  const { form } = words('first').practise;
  return (
    <fieldset class="item">
      <legend>
        <Label item={item} />
      </legend>
      <div class="choices">
        <label class="volts">
          <span class="away">{form.volts}</span>
          <input
            type="text"
            inputMode="decimal"
            autocomplete="off"
            value={chosen === NOTHING ? '' : (chosen ?? '')}
            onInput={({ currentTarget }) => onChoose(currentTarget.value)}
          />
          <span aria-hidden="true">V</span>
        </label>
        <label class="choice">
          <input
            type="checkbox"
            checked={chosen === NOTHING}
            onChange={({ currentTarget }) => onChoose(currentTarget.checked ? NOTHING : '')}
          />
          <span>{form.showsNothing}</span>
        </label>
      </div>
    </fieldset>
  );
}

/** How one item was marked, in place of its controls. */
function MarkedItem({ item, part }: { item: AskedItem; part: ToldPart }) {
  const { form } = words('first').practise;
  return (
    <p class="item marked-item">
      <span class="label">
        <Label item={item} />
      </span>
      <span class={part.correct ? 'verdict right' : 'verdict wrong'}>
        {part.correct ? (
          set(form.right, { away: (text) => <span class="away">{text}</span>, right: part.right })
        ) : (
          <>
            {part.given === undefined ? form.leftOut : unbroken(form.wrong(part.given))}
            <span class="instead">{unbroken(form.instead(part.right))}</span>
          </>
        )}
      </span>
    </p>
  );
}

/** The answer by ordinary form controls; the same answer as by touching the drawing. */
export function AnswerForm({ asked, chosen, onChoose, parts }: Props) {
  // Items of a sequence stand under the act after which they are asked.
  const groups = new Map<string, AskedItem[]>();
  for (const item of asked.items) {
    const group = item.moment ?? '';
    groups.set(group, [...(groups.get(group) ?? []), item]);
  }
  const formOf = (item: AskedItem) => {
    const part = parts?.get(item.item);
    if (part) return <MarkedItem key={item.item} item={item} part={part} />;
    const props = {
      item,
      chosen: chosen.get(item.item),
      onChoose: (state: string) => onChoose(item.item, state),
    };
    return item.choices.length > 0 ? (
      <Choices key={item.item} {...props} />
    ) : (
      <Volts key={item.item} {...props} />
    );
  };
  return (
    <div class="items">
      {[...groups].map(([group, items]) =>
        group ? (
          <section key={group} class="group" aria-label={group}>
            <h3>{unbroken(group.charAt(0).toUpperCase() + group.slice(1))}</h3>
            {items.map(formOf)}
          </section>
        ) : (
          <div key={group} class="group">
            {items.map(formOf)}
          </div>
        ),
      )}
    </div>
  );
}
