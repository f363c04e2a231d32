/** The page and the programs as they are delivered, built once for all test files of a run; nobody changes them. */
import { request } from 'node:http';
import { join } from 'node:path';
import { inject } from 'vitest';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where it is asked for builds. */
    readonly builds: string;
  }
}

/** Waits for as long as the build takes. */
const ask = (name: string): Promise<string> =>
  new Promise((resolve, reject) => {
    request(`${inject('builds')}/${name}`, { agent: false }, (reply) => {
      let text = '';
      reply.setEncoding('utf8').on('data', (piece: string) => {
        text += piece;
      });
      reply.on('end', () => {
        if (reply.statusCode === 200) resolve(text);
        else reject(new Error(text));
      });
    })
      .on('error', reject)
      .end();
  });

/** The folder with the built page. */
export const builtPage = (): Promise<string> => ask('page');

/** The same page with the made-up language in it. */
export const builtPageMadeUp = (): Promise<string> => ask('page-made-up');

/** A compiled program, by the name of its source: `src/cli/main.ts`. */
export const builtProgram = async (source: string): Promise<string> =>
  join(await ask('programs'), source.replace(/\.ts$/, '.js'));

/** The command line. */
export const builtPolewise = (): Promise<string> => builtProgram('src/cli/main.ts');
