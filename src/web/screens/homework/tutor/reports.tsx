/** The screens of reports, by their names in addresses: every one is a line. */
import type { VNode } from 'preact';
import type { Ground } from '../../../start.ts';
import { words } from '../../../words.ts';
import { Competence } from './competence.tsx';
import { Report } from './report.tsx';
import { Term } from './term.tsx';

interface ReportScreen {
  /** What it is of: a set or a class, where a link leads to it. */
  readonly on: 'set' | 'class';
  readonly title: () => string;
  readonly screen: (ground: Ground, of: string) => VNode;
}

export const REPORTS: Readonly<Record<string, ReportScreen>> = {
  report: {
    on: 'set',
    title: () => words('sets').report.report,
    screen: (ground, set) => <Report key={set} ground={ground} set={set} />,
  },
  term: {
    on: 'class',
    title: () => words('sets').term.title,
    screen: (_, id) => <Term key={id} class={id} />,
  },
  competence: {
    on: 'class',
    title: () => words('sets').competence.title,
    screen: (_, id) => <Competence key={id} class={id} />,
  },
};

interface NamedReport extends ReportScreen {
  readonly name: string;
}

export const reportsOn = (what: ReportScreen['on']): readonly NamedReport[] =>
  Object.entries(REPORTS).flatMap(([name, report]) => (report.on === what ? [{ name, ...report }] : []));
