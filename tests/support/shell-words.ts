/** A command line as a shell reads it, as far as the documentation uses one. */

export interface ShellCommand {
  /** `NAME=value` before the command. */
  readonly environment: Readonly<Record<string, string>>;
  readonly words: readonly string[];
  /** Where its output goes with `>`. */
  readonly into?: string;
}

/**
 * The commands of a pipe. Quotation marks, variables before a command, `|`, `>`, a backslash at the end of a line and
 * comments are understood; anything else is a mistake of the example.
 */
export function pipeOf(line: string): ShellCommand[] {
  const text = line.replaceAll(/\\\n\s*/g, '').replace(/\s+#\s.*$/, '');
  const tokens = text.match(/"[^"]*"|[|>]|(?:[^\s"|>]|"[^"]*")+/g) ?? [];
  const commands: { environment: Record<string, string>; words: string[]; into?: string }[] = [];
  let current: (typeof commands)[number] = { environment: {}, words: [] };
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at]!;
    if (token === '|') {
      commands.push(current);
      current = { environment: {}, words: [] };
    } else if (token === '>') current.into = plain(tokens[++at] ?? '');
    else if (current.words.length === 0 && /^[A-Z_]+=/.test(token)) {
      const [name = '', ...value] = token.split('=');
      current.environment[name] = plain(value.join('='));
    } else current.words.push(plain(token));
  }
  return [...commands, current];
}

function plain(token: string): string {
  const word = token.replaceAll('"', '');
  if (/[$`\\;&<*]|'/.test(token.replaceAll(/"[^"$`\\]*"/g, '')))
    throw new Error(`What a shell makes of ${token} isn't known here.`);
  return word;
}
