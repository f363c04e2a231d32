import type { Asked, AskedItem, MarkPart } from '../../../../shared/question.ts';
import { NOTHING } from './answer.ts';

interface Props {
  readonly asked: Asked;
  readonly chosen: ReadonlyMap<string, string>;
  readonly onChoose: (item: string, state: string) => void;
  /** Once it has been marked: by item. */
  readonly parts?: ReadonlyMap<string, MarkPart>;
}

function Marked({ part }: { part: MarkPart }) {
  if (part.correct) return <p class="verdict right">Right: {part.right}</p>;
  return (
    <p class="verdict wrong">
      Wrong: it is {part.right}
      {part.given === undefined ? '' : `, you said ${part.given}`}
    </p>
  );
}

function Choices({
  item,
  chosen,
  onChoose,
  part,
}: {
  item: AskedItem;
  chosen: string | undefined;
  onChoose: (state: string) => void;
  part: MarkPart | undefined;
}) {
  return (
    <fieldset class="item" disabled={part !== undefined}>
      <legend>{item.label}</legend>
      <div class={item.choices.length > 3 ? 'choices long' : 'choices'}>
        {item.choices.map((state) => (
          <label key={state} class="choice" data-state={state}>
            <input
              type="radio"
              name={item.item}
              value={state}
              checked={chosen === state}
              onChange={() => onChoose(state)}
            />
            <span>{state}</span>
          </label>
        ))}
      </div>
      {part && <Marked part={part} />}
    </fieldset>
  );
}

function Volts({
  item,
  chosen,
  onChoose,
  part,
}: {
  item: AskedItem;
  chosen: string | undefined;
  onChoose: (state: string) => void;
  part: MarkPart | undefined;
}) {
  return (
    <fieldset class="item" disabled={part !== undefined}>
      <legend>{item.label}</legend>
      <div class="row">
        <label class="volts">
          <span class="away">Volts</span>
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
          <span>shows nothing</span>
        </label>
      </div>
      {part && <Marked part={part} />}
    </fieldset>
  );
}

/** The answer by ordinary form controls; the same answer as by touching the drawing. */
export function AnswerForm({ asked, chosen, onChoose, parts }: Props) {
  return (
    <div class="items">
      {asked.items.map((item) => {
        const props = {
          item,
          chosen: chosen.get(item.item),
          part: parts?.get(item.item),
          onChoose: (state: string) => onChoose(item.item, state),
        };
        return item.choices.length > 0 ? (
          <Choices key={item.item} {...props} />
        ) : (
          <Volts key={item.item} {...props} />
        );
      })}
    </div>
  );
}
