import { openCourse } from '../course.ts';
import { runDrill } from '../drill/drill.ts';
import { type Io, UsageError } from '../io.ts';
import { wholeNumber } from '../numbers.ts';
import { withNewStore } from '../store-place.ts';

export interface DrillOptions {
  readonly seed?: string;
  readonly skill?: string;
  readonly place?: boolean;
  readonly count: string;
  readonly data?: string;
  readonly banks?: string;
}

/** Practises in the terminal. */
export async function drill(options: DrillOptions, io: Io): Promise<void> {
  const count = wholeNumber(io, '--count', options.count, { low: 1, high: 1000, example: 10 });
  const course = await openCourse(io, options.banks);
  if (options.skill !== undefined && !course.skills.has(options.skill)) {
    const { wrong, right } = io.words.course.noSkill;
    throw new UsageError(wrong(options.skill), right([...course.skills.keys()]));
  }
  if (options.skill !== undefined && options.place) {
    const { wrong, right } = io.words.drill.placeAndSkill;
    throw new UsageError(wrong, right);
  }
  const seed = options.seed ?? io.freshSeed();
  await withNewStore(io, options.data, (store) =>
    runDrill(
      {
        course,
        store,
        seed,
        count,
        ...(options.skill ? { skill: options.skill } : {}),
        ...(options.place ? { place: true } : {}),
      },
      io,
    ),
  );
}
