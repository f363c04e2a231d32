/** Sends answers that wait, in their order, each once by its id, however often it is tried. */
import type { KeptSave, SaveBatch, SaveResults } from '../../../../shared/homework-views.ts';
import { type Sent, sendLine } from '../line.ts';
import type { KeptHomework, WaitingAnswer } from './kept-homework.ts';

/** How a request went. `later`: no network, or a server that can't just now. `signed-out`: somebody has to sign in first. */
export type Posted =
  | { readonly kind: 'results'; readonly results: SaveResults }
  | { readonly kind: 'later' }
  | { readonly kind: 'signed-out' }
  | { readonly kind: 'refused'; readonly code: string; readonly message: string };

export type Post = (paper: string, batch: SaveBatch) => Promise<Posted>;

export type SendResult = 'done' | 'later' | 'signed-out';

/** Answers in one request: small enough for a slow line. */
const BATCH = 40;

/** The first in line that are of one paper. */
function firstOfOnePaper(line: readonly WaitingAnswer[], most: number): readonly WaitingAnswer[] {
  const end = line.findIndex(({ paper }) => paper !== line[0]?.paper);
  return line.slice(0, Math.min(most, end < 0 ? line.length : end));
}

async function takeResults(
  kept: KeptHomework,
  sent: readonly WaitingAnswer[],
  { now, results }: SaveResults,
): Promise<void> {
  const byId = new Map(results.map((result) => [result.id, result]));
  const arrived: { key: number; save: KeptSave }[] = [];
  for (const { key, person, paper, id, item, answer, secondsUsed } of sent) {
    const result = byId.get(id);
    if (!result) continue;
    if (result.result === 'refused') {
      const { code, message } = result.problem;
      await kept.refuse([key], [{ person, paper, item, code, message }]);
    } else arrived.push({ key, save: { id, number: result.number, item, answer, at: now, secondsUsed } });
  }
  const [first] = sent;
  if (first) await kept.arrived(first.person, first.paper, arrived);
}

/** Sends what one person has given on this device until nothing waits, or it can't be sent now. */
export const sendWaiting = (
  kept: KeptHomework,
  person: string,
  post: Post,
  onNow: (now: number) => void = () => undefined,
): Promise<SendResult> =>
  sendLine(
    {
      first: async (most) => firstOfOnePaper(await kept.waitingOf(person), most),
      async send(some): Promise<Sent<Exclude<SendResult, 'done'>>> {
        const { paper, key, item } = some[0]!;
        const answers = some.map(({ id, item: of, answer, secondsUsed }) => ({
          id,
          item: of,
          answer,
          secondsUsed,
        }));
        const posted = await post(paper, { answers });
        switch (posted.kind) {
          case 'later':
          case 'signed-out':
            return { kind: 'stopped', why: posted.kind };
          case 'results':
            onNow(posted.results.now);
            await takeResults(kept, some, posted.results);
            return { kind: 'taken' };
          case 'refused': {
            const { code, message } = posted;
            return {
              kind: 'refused',
              giveUp: () => kept.refuse([key], [{ person, paper, item, code, message }]),
            };
          }
        }
      },
    },
    BATCH,
  );
