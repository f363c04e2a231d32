import { useState } from 'preact/hooks';
import type { Bank } from '../../../../../shared/bank.ts';
import type { HomeworkWish } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Button } from '../../../forms/button.tsx';
import { Refused } from '../../../forms/failure.tsx';
import { Form } from '../../../forms/form.tsx';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { words } from '../../../words.ts';
import { goTo } from '../homework-route.ts';
import { clockNote } from '../moments.ts';
import { Head } from '../parts/head.tsx';
import { ChooseSkills } from './choose-skills.tsx';
import { draftOf, freshDraft, type SetDraft, wishOf } from './set-draft.ts';

type Of = { readonly class: string } | { readonly set: string };

interface FieldProps<T> {
  readonly draft: SetDraft;
  readonly onChange: (change: Partial<SetDraft>) => void;
  readonly label: string;
  readonly name: T;
}

/** The fields that hold a number as it was typed. */
function NumberField({
  draft,
  onChange,
  label,
  name,
  most,
}: FieldProps<'items' | 'marksEach' | 'attempts'> & { most: number }) {
  return (
    <label class="field narrow">
      {label}
      <input
        type="number"
        inputMode="numeric"
        min={1}
        max={most}
        required
        value={draft[name]}
        onInput={({ currentTarget }) => onChange({ [name]: currentTarget.value })}
      />
    </label>
  );
}

function TimeField({ draft, onChange, label, name }: FieldProps<'opensAt' | 'closesAt'>) {
  const note = clockNote(draft[name]);
  return (
    <label class="field">
      {label}
      <input
        type="datetime-local"
        required
        value={draft[name]}
        onInput={({ currentTarget }) => onChange({ [name]: currentTarget.value })}
      />
      {note && <span class="note">{note}</span>}
    </label>
  );
}

function ChoiceField<N extends 'level' | 'help' | 'review' | 'counts'>({
  draft,
  onChange,
  label,
  name,
  texts,
}: FieldProps<N> & { texts: Readonly<Record<HomeworkWish[N], string>> }) {
  return (
    <label class="field">
      {label}
      <select
        value={draft[name]}
        onChange={({ currentTarget }) => onChange({ [name]: currentTarget.value } as Partial<SetDraft>)}
      >
        {Object.entries<string>(texts).map(([value, text]) => (
          <option key={value} value={value}>
            {text}
          </option>
        ))}
      </select>
    </label>
  );
}

/** How much, when, and how: what has been filled in already. */
function Fields(shared: Pick<FieldProps<never>, 'draft' | 'onChange'>) {
  const { form: w, states } = words('sets');
  const { draft, onChange } = shared;
  return (
    <>
      <fieldset class="fields">
        <legend>{w.howMuch}</legend>
        <NumberField {...shared} label={w.items} name="items" most={60} />
        <NumberField {...shared} label={w.marksEach} name="marksEach" most={100} />
        <ChoiceField {...shared} label={w.level} name="level" texts={states.levels} />
      </fieldset>
      <fieldset class="fields">
        <legend>{w.times}</legend>
        <TimeField {...shared} label={w.opens} name="opensAt" />
        <TimeField {...shared} label={w.closes} name="closesAt" />
      </fieldset>
      <fieldset class="fields">
        <legend>{w.how}</legend>
        <NumberField {...shared} label={w.attempts} name="attempts" most={10} />
        {Number(draft.attempts) > 1 && (
          <ChoiceField {...shared} label={w.counts} name="counts" texts={states.counts} />
        )}
        <ChoiceField {...shared} label={w.help} name="help" texts={states.help} />
        <ChoiceField {...shared} label={w.review} name="review" texts={states.review} />
        <div class="whole-row">
          <label class="tick">
            <input
              type="checkbox"
              checked={draft.supervised}
              aria-describedby="supervised-note"
              onChange={({ currentTarget }) => onChange({ supervised: currentTarget.checked })}
            />
            {w.supervised}
          </label>
          <p class="quiet" id="supervised-note">
            {w.supervisedNote}
          </p>
        </div>
      </fieldset>
    </>
  );
}

function EditSet({ bank, of, before }: { bank: Bank; of: Of; before: SetDraft }) {
  const { form: w } = words('sets');
  const [draft, setDraft] = useState(before);
  const { busy, failure, run } = useAct();
  const [told, setTold] = useState('');
  const onChange = (change: Partial<SetDraft>): void => setDraft((now) => ({ ...now, ...change }));
  const keep = async (): Promise<void> => {
    const wish = wishOf(draft);
    setTold('problem' in wish ? wish.problem : '');
    if ('problem' in wish) return;
    const { set } =
      'set' in of
        ? await call('changeHomework', { params: { set: of.set }, body: wish })
        : await call('draftHomework', { params: { class: of.class }, body: wish });
    goTo({ at: 'set', set: set.id });
  };
  return (
    <Form class="set-form" byBrowser onSend={() => run(keep)}>
      <label class="field">
        {w.title}
        <input
          type="text"
          maxLength={120}
          required
          value={draft.title}
          onInput={({ currentTarget }) => onChange({ title: currentTarget.value })}
        />
      </label>
      <ChooseSkills bank={bank} chosen={draft.skills} onChange={(skills) => onChange({ skills })} />
      <Fields draft={draft} onChange={onChange} />
      <p class="quiet">{w.others}</p>
      <Refused words={told || failure} />
      <div class="row">
        <Button kind="main" busy={busy} meanwhile={w.keeping}>
          {w.keep}
        </Button>
      </div>
    </Form>
  );
}

/** A new set, or a draft that is made anew. */
export function SetForm({ bank, of }: { bank: Bank; of: Of }) {
  const { form: w } = words('sets');
  const { fetched, again } = useFetched('set' in of ? of.set : of.class, async () => {
    if ('set' in of) {
      const { wish } = await call('homework', { params: { set: of.set } });
      return draftOf(wish, bank);
    }
    return freshDraft(Date.now());
  });
  return (
    <div class="homework">
      <Head title={'set' in of ? w.change : w.new} />
      <Show of={fetched} again={again}>
        {(before) => <EditSet bank={bank} of={of} before={before} />}
      </Show>
    </div>
  );
}
