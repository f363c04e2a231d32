/** What went wrong, where no field is to blame; read out when it appears. */
export const Failure = ({ words }: { words: string }) => (
  <p role="alert" class={words ? 'caution' : 'caution empty'}>
    {words}
  </p>
);

/** The same in the homework, where it stands only while something is wrong. */
export const Refused = ({ words }: { words: string }) =>
  words ? (
    <p class="refused" role="alert">
      {words}
    </p>
  ) : null;
