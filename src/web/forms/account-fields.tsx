import { words } from '../words.ts';
import { Field } from './field.tsx';
import { asSignIn } from './typed.ts';

interface Props {
  readonly value: string;
  readonly problem: string | undefined;
  readonly onValue: (value: string) => void;
}

/** The name by which somebody signs in from now on; what becomes of what is typed is said. */
export function SignInNameField({ value, problem, first, onValue }: Props & { first: boolean }) {
  const { account: w } = words('enter');
  const read = asSignIn(value);
  return (
    <Field
      label={w.name}
      name="username"
      kind="exact"
      autocomplete="username"
      first={first}
      value={value}
      note={read && read !== value ? w.signsInAs(read) : w.nameNote}
      problem={problem}
      onValue={onValue}
    />
  );
}

/** A password that is chosen. */
export function NewPasswordField({ label, value, problem, onValue }: Props & { label?: string }) {
  const { account: w } = words('enter');
  return (
    <Field
      label={label ?? w.password}
      name="new-password"
      kind="password"
      autocomplete="new-password"
      value={value}
      note={w.passwordNote}
      problem={problem}
      onValue={onValue}
    />
  );
}

/** The password until now, by whoever changes it. */
export const PasswordSoFarField = (props: Props) => (
  <Field
    label={words('enter').account.passwordSoFar}
    name="password"
    kind="password"
    autocomplete="current-password"
    {...props}
  />
);
