/** What homework does with a server that refuses, is not reached, or thinks for long. */
import './support/words.ts';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { apiProblemCode } from '../../shared/api-problem.ts';
import { ApiFailure } from '../../src/web/api.ts';
import { postWithin } from '../../src/web/local/homework/post.ts';
import { fromServerOrDevice } from '../../src/web/local/homework/server-or-device.ts';

afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

const batch = {
  answers: [
    {
      id: 'save-1',
      item: 0,
      answer: { kind: 'lamp-states' as const, states: { '-H1': 'lit' as const } },
      secondsUsed: 3,
    },
  ],
};
const sends = vi.fn<typeof fetch>();
/** The server replies in this way. */
function replies(status: number, body: unknown): void {
  sends.mockReset();
  sends.mockImplementation(async () => new Response(JSON.stringify(body), { status }));
  vi.stubGlobal('fetch', sends);
}
const refuses = (code: string) => replies(400, { code, message: 'It is so.', hint: 'Do this.' });
const post = () => postWithin(60_000)('paper-1', batch);

describe('answers of homework sent to a server', () => {
  it('go to their paper, and what became of each comes back', async () => {
    const results = { now: 1000, results: [{ result: 'kept', id: 'save-1', number: 1 }] };
    replies(200, results);
    expect(await post()).toEqual({ kind: 'results', results });
    const [address, init] = sends.mock.calls[0]!;
    expect(String(address)).toContain('/paper-1/');
    expect(JSON.parse(String(init!.body))).toEqual(batch);
  });

  /** What passes by itself: the same answers are taken later. */
  const PASSING = [
    'too-many-tries',
    'too-busy',
    'stopping',
    'store-unavailable',
    'internal-fault',
    'too-slow',
  ];
  it.each(apiProblemCode.options)('that are refused with %s wait, or are told as refused', async (code) => {
    refuses(code);
    expect(await post()).toEqual(
      PASSING.includes(code)
        ? { kind: 'later' }
        : code === 'sign-in-first'
          ? { kind: 'signed-out' }
          : { kind: 'refused', code, message: 'It is so.' },
    );
  });

  it('wait where nobody answers, or something else than the server does', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('no network')));
    expect(await post()).toEqual({ kind: 'later' });
    replies(502, 'a proxy');
    expect(await post()).toEqual({ kind: 'later' });
    replies(200, { strange: true });
    expect(await post()).toEqual({ kind: 'later' });
  });
});

describe('what is kept on the device', () => {
  const unreached = new ApiFailure(null, 'Nobody answers.', '');
  const refused = new ApiFailure('withdrawn', 'It was withdrawn.', '');
  const asking = (error: unknown) => () => Promise.reject(error);

  it('isn’t shown where the server answers', async () => {
    expect(await fromServerOrDevice(async () => 'fresh', Promise.resolve('kept'))).toEqual({
      from: 'server',
      value: 'fresh',
    });
  });

  it('is shown where the server is not reached', async () => {
    expect(await fromServerOrDevice(asking(unreached), Promise.resolve('kept'))).toEqual({
      from: 'device',
      value: 'kept',
    });
  });

  it('doesn’t hide what the server refused, nor a fault of the page', async () => {
    await expect(fromServerOrDevice(asking(refused), Promise.resolve('kept'))).rejects.toBe(refused);
    const fault = new TypeError('a fault');
    await expect(fromServerOrDevice(asking(fault), Promise.resolve('kept'))).rejects.toBe(fault);
  });

  it('is shown where the server thinks for eight seconds, and is waited for where nothing is kept', async () => {
    const patience = new AbortController();
    const timeout = vi.spyOn(AbortSignal, 'timeout').mockReturnValue(patience.signal);
    const thinking = (signal: AbortSignal | undefined): Promise<string> =>
      new Promise((_, reject) => signal!.addEventListener('abort', () => reject(signal!.reason)));
    const shown = fromServerOrDevice(thinking, Promise.resolve('kept'));
    await vi.waitFor(() => expect(timeout).toHaveBeenCalledWith(8000));
    patience.abort();
    expect(await shown).toEqual({ from: 'device', value: 'kept' });

    timeout.mockClear();
    const ask = vi.fn(async () => 'fresh');
    expect(await fromServerOrDevice(ask, Promise.resolve(undefined))).toEqual({
      from: 'server',
      value: 'fresh',
    });
    expect(ask).toHaveBeenCalledWith(undefined);
    expect(timeout).not.toHaveBeenCalled();
  });

  it('is nothing where nothing is kept: that nobody answers is told', async () => {
    await expect(fromServerOrDevice(asking(unreached), Promise.resolve(undefined))).rejects.toBe(unreached);
  });
});
