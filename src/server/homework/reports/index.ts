/** What tutors are told of a class: one set, all sets, and who can do what. Every report is a line. */
import type { z } from 'zod';
import { type ReportName, reportRoutes } from '../../../../shared/api-reports.ts';
import type { Asking } from '../../people/gate.ts';
import type { Desk } from '../desk.ts';
import { competenceOf } from './competence.ts';
import { setReport } from './set-report.ts';
import { termOf } from './term.ts';

type Routes = typeof reportRoutes;

/** What a route names and asks besides. */
interface Asked<R extends Routes[ReportName]> {
  readonly params: z.infer<R['params']>;
  readonly query: R extends { readonly query: infer Q extends z.ZodType } ? z.infer<Q> : undefined;
}

type Report<R extends Routes[ReportName]> = (
  desk: Desk,
  asking: Asking,
  asked: Asked<R>,
) => Promise<z.infer<R['reply']>>;

/** Reports by the names of their routes. */
export const REPORTS: { readonly [N in ReportName]: Report<Routes[N]> } = {
  homeworkReport: (desk, asking, { params }) => setReport(desk, asking, params.set),
  term: (desk, asking, { params }) => termOf(desk, asking, params.class),
  competence: (desk, asking, { params, query }) => competenceOf(desk, asking, params.class, query),
};

/** A report of whatever name. */
export type AnyReport = (
  desk: Desk,
  asking: Asking,
  asked: { readonly params: unknown; readonly query: unknown },
) => Promise<unknown>;

export const REPORT_NAMES = Object.keys(reportRoutes) as ReportName[];
