/** What is wrong with the form of a value that was sent. */
import type { z } from 'zod';
import { formCalled } from '../form-names.ts';

const LONGEST = 300;

export const shortened = (text: string): string =>
  text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;

export type Issue = z.core.$ZodIssue;

/** The first thing that is wrong with a value, with its place in it. */
export const wrongForm = (issue: Issue | undefined): string =>
  shortened(
    `At ${issue?.path.map(String).join('.') || 'the top'}: ${issue ? formCalled(issue.message) : 'not of the form wanted'}.`,
  );
