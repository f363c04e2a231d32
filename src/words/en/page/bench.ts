export const bench = {
  title: 'Write a circuit',
  notation: 'Notation',
  asWritten: 'The circuit as it is written',
  mistakes: 'Mistakes',
  againstRules: 'Against the rules of drawing and of safe practice',
  noMistake: 'No mistake, and it keeps the rules of drawing and of safe practice.',
  line: (line: number) => `Line ${line}.`,
  whatItDoes: 'What it does',
  atRest: 'At rest',
  /** Stands there first. */
  example: `# Vent fan 2: running and tripped
supply A 24 V AC earthed "Control supply"
-F1  breaker 2 A "Control supply"
-B1  field-contact make "Fan tripped"
-K3  relay 2 poles
-H1  lamp green "Fan healthy"
-H2  lamp amber "Fan tripped"

A:L  -F1:1-2  -B1:13-14  -K3:A1-A2  A:N
-F1:2  -K3:11-12  -H1:X1-X2  A:N
-K3:11-14  -H2:X1-X2  A:N
`,
};

export type BenchWords = typeof bench;
