/**
 * What reports say, as it is sent. The reports themselves are made in `src/homework/reports`; a test holds their types and
 * these schemas equal.
 */
import { z } from 'zod';
import { paperItem } from './homework.ts';
import { circuitId, moment, skillId } from './memory.ts';
import { learnerId } from './practice.ts';
import { toldMark } from './question.ts';

const share = z.number().min(0).max(1);
const count = z.number().int().min(0);

/** What a marked paper comes to, overrides included. */
export const paperTotal = z.strictObject({
  earned: z.number().min(0),
  outOf: z.number().min(0),
  share,
  /** Items answered wholly, or in part. */
  answered: count,
  items: count,
});

const ideaShown = {
  id: z.string(),
  idea: z.string(),
  advice: z.string(),
  /** Answers that this idea alone explains. */
  times: count,
  /** Learners who gave one. */
  learners: z.array(learnerId),
};
const shownIn = z.array(z.strictObject({ learner: learnerId, item: count }));

export const shownIdea = z.strictObject({ ...ideaShown, shownIn });

/** One learner, one paper. */
export const learnerReport = z.strictObject({
  learner: learnerId,
  attempt: z.number().int().min(1),
  total: paperTotal,
  /** In the order of the paper. */
  skills: z.array(
    z.strictObject({
      skill: skillId,
      title: z.string(),
      earned: z.number().min(0),
      outOf: z.number().min(0),
      share,
      items: count,
    }),
  ),
  ideas: z.array(shownIdea),
  /** The weakest first, with the lesson that teaches it. */
  revise: z.array(
    z.strictObject({
      skill: skillId,
      title: z.string(),
      topic: z.strictObject({ id: z.string(), title: z.string() }).nullable(),
      share,
    }),
  ),
});

/** Why to speak to somebody. */
export const concern = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('nothing-handed-in') }),
  z.strictObject({ kind: z.literal('half-left-out'), answered: count, items: count }),
  z.strictObject({ kind: z.literal('low-marks'), share }),
  z.strictObject({ kind: z.literal('firm-idea'), id: z.string(), idea: z.string(), times: count }),
]);

/** A class, one set. */
export const classReport = z.strictObject({
  handedIn: count,
  learners: count,
  /** Mean share over those who handed in; null when nobody did. */
  skills: z.array(z.strictObject({ skill: skillId, title: z.string(), share: share.nullable() })),
  rows: z.array(
    z.strictObject({
      learner: learnerId,
      /** `waiting`: handed in, and not marked yet. `open`: there is time left. */
      stands: z.enum(['marked', 'waiting', 'open', 'nothing']),
      /** Null: nothing handed in, or not marked yet. */
      total: paperTotal.nullable(),
      /** In the order of the skills. */
      shares: z.array(share.nullable()),
    }),
  ),
  /** The commonest first, each with the smallest drawing on which it showed. */
  ideas: z.array(
    z.strictObject({
      ...ideaShown,
      shownIn,
      example: z.strictObject({ item: paperItem, mark: toldMark }).nullable(),
    }),
  ),
  places: z.array(
    z.strictObject({
      /** From 1. */
      place: z.number().int().min(1),
      skill: skillId,
      /** Mean mark as a share of the full one. */
      facility: z.number().nullable(),
      /** Corrected item-total correlation. */
      discrimination: z.number().nullable(),
      /** Best 27 % less weakest 27 %. */
      upperLower: z.number().nullable(),
      leftOut: count,
    }),
  ),
  /** Cronbach's alpha over the places. */
  alpha: z.number().nullable(),
  lookAfter: z.array(z.strictObject({ learner: learnerId, concerns: z.array(concern) })),
});

/** A class, several sets. */
export const termReport = z.strictObject({
  skills: z.array(z.strictObject({ skill: skillId, title: z.string() })),
  rows: z.array(
    z.strictObject({
      learner: learnerId,
      /** Share of the marks by set, in the order of the sets; null where nothing was handed in. */
      bySet: z.array(share.nullable()),
      /** Share of all marks by skill, in the order of the skills. */
      bySkill: z.array(share.nullable()),
    }),
  ),
  ideas: z.array(z.strictObject(ideaShown)),
});

/** How one skill stands with one person. */
export const competence = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.enum(['held', 'fading']),
    provenAt: moment,
    provenOn: z.array(circuitId),
    lastAt: moment,
    /** When a refresher is due. */
    dueAt: z.number(),
    /** The share of the marks to be expected now. */
    chance: share,
  }),
  z.strictObject({ kind: z.literal('not-yet'), begun: z.boolean() }),
]);

export const competenceMatrix = z.strictObject({
  at: moment,
  skills: z.array(z.strictObject({ id: skillId, title: z.string() })),
  /** Cells in the order of the skills. */
  rows: z.array(z.strictObject({ person: learnerId, cells: z.array(competence) })),
});

/** What was proven once and is due by a moment, the longest due first. */
export const refresher = z.strictObject({ person: learnerId, skill: skillId, dueAt: z.number() });
