import { beginsFormula, newClassTitle, newIntake } from '../../../../shared/new-names.ts';
import { Field } from '../../parts/field.tsx';
import { FORMULA_NAME } from '../enter/names.ts';

export interface Titled {
  readonly title: string;
  readonly intake: string;
}

/** What has to be put right before it can be sent. */
export const problemsOf = ({ title, intake }: Titled): { title?: string; intake?: string } => ({
  ...(newClassTitle.safeParse(title).success
    ? {}
    : { title: beginsFormula(title) ? FORMULA_NAME : 'A name of one line, at most 120 letters.' }),
  ...(intake.trim() === '' || newIntake.safeParse(intake).success
    ? {}
    : { intake: beginsFormula(intake) ? FORMULA_NAME : 'One line of at most 60 letters.' }),
});

/** As it is sent. */
export const bodyOf = ({ title, intake }: Titled): { title: string; intake: string | null } => ({
  title: title.trim(),
  intake: intake.trim() || null,
});

interface Props {
  readonly value: Titled;
  readonly looked: boolean;
  readonly first?: boolean;
  readonly onValue: (value: Titled) => void;
}

/** What a class is called, and which intake it is. */
export function TitleFields({ value, looked, first, onValue }: Props) {
  const problems = problemsOf(value);
  return (
    <>
      <Field
        label="Name of the class"
        autocomplete="off"
        first={first ?? false}
        value={value.title}
        note="Learners see it when they join: Control circuits, Thursday evening."
        problem={looked ? problems.title : undefined}
        onValue={(title) => onValue({ ...value, title })}
      />
      <Field
        label="Intake"
        autocomplete="off"
        optional
        value={value.intake}
        note="Where you number your groups: Autumn 2026. It may stay empty."
        problem={looked ? problems.intake : undefined}
        onValue={(intake) => onValue({ ...value, intake })}
      />
    </>
  );
}
