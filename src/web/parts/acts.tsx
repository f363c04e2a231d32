import type { Act } from '../../../shared/scenario.ts';
import type { Live } from '../engine/messages.ts';
import { Button } from '../forms/button.tsx';

/** A button for each act that can be done next. */
export const Acts = ({ acts, onAct }: { acts: Live['acts']; onAct: (act: Act) => void }) => (
  <>
    {acts.map(({ act, words }) => (
      <Button key={JSON.stringify(act)} onPress={() => onAct(act)}>
        {words}
      </Button>
    ))}
  </>
);
