/** Sends answers that wait, in their order, each once by its id, however often it is tried. */
import type { KeptSave, SaveBatch, SaveResults } from '../../../../shared/homework-views.ts';
import type { KeptHomework, WaitingAnswer } from './kept-homework.ts';

/** How a request went. `later`: no network, or a server that can't just now. `signed-out`: somebody has to sign in first. */
export type Sent =
  | { readonly kind: 'results'; readonly results: SaveResults }
  | { readonly kind: 'later' }
  | { readonly kind: 'signed-out' }
  | { readonly kind: 'refused'; readonly code: string; readonly message: string };

export type Post = (paper: string, batch: SaveBatch) => Promise<Sent>;

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
export async function sendWaiting(
  kept: KeptHomework,
  person: string,
  post: Post,
  onNow: (now: number) => void = () => undefined,
): Promise<SendResult> {
  let most = BATCH;
  for (;;) {
    const batch = firstOfOnePaper(await kept.waitingOf(person), most);
    const [first] = batch;
    if (!first) return 'done';
    const answers = batch.map(({ id, item, answer, secondsUsed }) => ({ id, item, answer, secondsUsed }));
    const sent = await post(first.paper, { answers });
    switch (sent.kind) {
      case 'later':
      case 'signed-out':
        return sent.kind;
      case 'results':
        onNow(sent.results.now);
        await takeResults(kept, batch, sent.results);
        most = BATCH;
        break;
      case 'refused':
        // One of them is at fault, or all together are too much: by halves it shows which.
        if (batch.length > 1) most = Math.ceil(batch.length / 2);
        else {
          const { person: whose, paper, item, key } = first;
          await kept.refuse([key], [{ person: whose, paper, item, code: sent.code, message: sent.message }]);
          most = BATCH;
        }
    }
  }
}
