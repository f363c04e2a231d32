/** Settings that are changed on several devices: each field goes by itself, and of each the change made last holds. */
import type { Settings } from '../../shared/settings.ts';

type Field = Exclude<keyof Settings, 'changedAt' | 'changes'>;
const FIELDS = [
  'assessmentAt',
  'minutesADay',
  'newSkillsADay',
  'placement',
] as const satisfies readonly Field[];

/** When a field was changed; settings from before that was noted were changed as a whole. */
const changeOf = ({ changes, changedAt }: Settings, field: Field): number => changes?.[field] ?? changedAt;

const changesOf = (settings: Settings): Record<Field, number> => {
  const at = (field: Field): number => changeOf(settings, field);
  return {
    assessmentAt: at('assessmentAt'),
    minutesADay: at('minutesADay'),
    newSkillsADay: at('newSkillsADay'),
    placement: at('placement'),
  };
};

/** Settings with some fields changed: always later than what they replace, also where a clock was put back. */
export function changeSettings(
  before: Settings,
  wanted: Partial<Pick<Settings, Field>>,
  now: number,
): Settings {
  const changedAt = Math.max(now, before.changedAt + 1);
  const changes = changesOf(before);
  for (const field of FIELDS) if (field in wanted) changes[field] = changedAt;
  return { ...before, ...wanted, changedAt, changes };
}

/** What holds of two: of each field the later change, and of two made in the same moment the other's. */
export function mergeSettings(one: Settings, other: Settings): Settings {
  if (one.changes === undefined && other.changes === undefined)
    return other.changedAt >= one.changedAt ? other : one;
  const [ours, theirs] = [changesOf(one), changesOf(other)];
  const merged = { ...one };
  for (const field of FIELDS)
    if (theirs[field] >= ours[field]) Object.assign(merged, { [field]: other[field] });
  const changes = { ...ours };
  for (const field of FIELDS) changes[field] = Math.max(ours[field], theirs[field]);
  return { ...merged, changedAt: Math.max(one.changedAt, other.changedAt), changes };
}

/** A device whose clock is ahead must not have the last word until its date has come. */
export function notAheadOf(settings: Settings, now: number): Settings {
  const changedAt = Math.min(settings.changedAt, now);
  if (settings.changes === undefined) return { ...settings, changedAt };
  const changes = changesOf(settings);
  for (const field of FIELDS) changes[field] = Math.min(changes[field], now);
  return { ...settings, changedAt, changes };
}

/** Whether two say the same, and as of the same moments. */
export const sameSettings = (one: Settings, other: Settings): boolean =>
  one.changedAt === other.changedAt &&
  FIELDS.every(
    (field) =>
      changeOf(one, field) === changeOf(other, field) &&
      JSON.stringify(one[field]) === JSON.stringify(other[field]),
  );
