import { beginsFormula, newClassTitle, newIntake } from '../../../../shared/new-names.ts';
import { Field } from '../../forms/field.tsx';
import { words } from '../../words.ts';

export interface Titled {
  readonly title: string;
  readonly intake: string;
}

type TitleProblems = Readonly<Record<keyof Titled, string | undefined>>;

/** What has to be put right before it can be sent. */
export function problemsOf({ title, intake }: Titled): TitleProblems {
  const { common, one } = words('classes');
  const wrong = (text: string, tooLong: string): string =>
    beginsFormula(text) ? common.formulaName : tooLong;
  return {
    title: newClassTitle.safeParse(title).success ? undefined : wrong(title, one.title.nameTooLong),
    intake:
      intake.trim() === '' || newIntake.safeParse(intake).success
        ? undefined
        : wrong(intake, one.title.intakeTooLong),
  };
}

/** As it is sent. */
export const bodyOf = ({ title, intake }: Titled): { title: string; intake: string | null } => ({
  title: title.trim(),
  intake: intake.trim() || null,
});

interface Props {
  readonly value: Titled;
  readonly told: Partial<TitleProblems>;
  readonly first?: boolean;
  readonly onValue: (value: Titled) => void;
}

/** What a class is called, and which intake it is. */
export function TitleFields({ value, told, first, onValue }: Props) {
  const w = words('classes').one.title;
  return (
    <>
      <Field
        label={w.name}
        autocomplete="off"
        first={first ?? false}
        value={value.title}
        note={w.nameNote}
        problem={told.title}
        onValue={(title) => onValue({ ...value, title })}
      />
      <Field
        label={w.intake}
        autocomplete="off"
        optional
        value={value.intake}
        note={w.intakeNote}
        problem={told.intake}
        onValue={(intake) => onValue({ ...value, intake })}
      />
    </>
  );
}
