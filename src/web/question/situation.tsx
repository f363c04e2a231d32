import { unbroken } from '../words.ts';

/** What a question starts from: the state in one paragraph, what is done as a list in its order. */
export function Situation({ sentences }: { sentences: readonly string[] }) {
  const isAct = (sentence: string): boolean => /^\d+\. /.test(sentence);
  const acts = sentences.filter(isAct);
  return (
    <div class="situation">
      <p>{unbroken(sentences.filter((sentence) => !isAct(sentence)).join(' '))}</p>
      {acts.length > 0 && (
        <ol>
          {acts.map((sentence) => (
            <li key={sentence}>{unbroken(sentence.replace(/^\d+\. /, ''))}</li>
          ))}
        </ol>
      )}
    </div>
  );
}
