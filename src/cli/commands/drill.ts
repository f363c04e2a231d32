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
  const count = wholeNumber('--count', options.count, { low: 1, high: 1000, example: 10 });
  const course = await openCourse(io, options.banks);
  if (options.skill !== undefined && !course.skills.has(options.skill)) {
    throw new UsageError(
      `There is no skill ${options.skill}.`,
      `Skills: ${[...course.skills.keys()].join(', ')}.`,
    );
  }
  if (options.skill !== undefined && options.place)
    throw new UsageError(
      '--place finds where to begin among all skills.',
      'Leave out --skill, or leave out --place.',
    );
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
