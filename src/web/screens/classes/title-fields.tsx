import { beginsFormula, newClassTitle, newIntake } from '../../../../shared/new-names.ts';
import { Field } from '../../forms/field.tsx';
import { words } from '../../words.ts';

export interface Titled {
  readonly title: string;
  readonly intake: string;
}

/** What has to be put right before it can be sent. */
export function problemsOf({ title, intake }: Titled): { title?: string; intake?: string } {
  const { common, one } = words('classes');
  return {
    ...(newClassTitle.safeParse(title).success
      ? {}
      : { title: beginsFormula(title) ? common.formulaName : one.title.nameTooLong }),
    ...(intake.trim() === '' || newIntake.safeParse(intake).success
      ? {}
      : { intake: beginsFormula(intake) ? common.formulaName : one.title.intakeTooLong }),
  };
}

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
  const w = words('classes').one.title;
  const problems = problemsOf(value);
  return (
    <>
      <Field
        label={w.name}
        autocomplete="off"
        first={first ?? false}
        value={value.title}
        note={w.nameNote}
        problem={looked ? problems.title : undefined}
        onValue={(title) => onValue({ ...value, title })}
      />
      <Field
        label={w.intake}
        autocomplete="off"
        optional
        value={value.intake}
        note={w.intakeNote}
        problem={looked ? problems.intake : undefined}
        onValue={(intake) => onValue({ ...value, intake })}
      />
    </>
  );
}
