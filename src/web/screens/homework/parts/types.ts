/** Names for pieces of what the server tells. */
import type { z } from 'zod';
import type {
  classReport,
  competence,
  concern,
  learnerReport,
} from '../../../../../shared/homework-reports.ts';

export type LearnerReport = Readonly<z.infer<typeof learnerReport>>;
export type ClassReport = Readonly<z.infer<typeof classReport>>;
export type Competence = Readonly<z.infer<typeof competence>>;
export type Concern = Readonly<z.infer<typeof concern>>;
