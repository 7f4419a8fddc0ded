import type { Problem } from '@underlath/contract';
import { useState } from 'react';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { FormFail } from './form-fail.tsx';

type TakeBackProps = {
  /** What is taken back, for who hears the button without seeing its row. */
  what: string;
  busy: boolean;
  problem: Problem | null;
  onTake: (why: string) => void;
};

/** A button that asks why before it takes an entry back. */
export function TakeBack({ what, busy, problem, onTake }: TakeBackProps) {
  const [why, setWhy] = useState<string | null>(null);
  if (why === null)
    return (
      <Button look="quiet" onClick={() => setWhy('')}>
        Take back<span className="hidden-text"> {what}</span>
      </Button>
    );
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        onTake(why);
      }}
    >
      <TextInput label="Why it is taken back" value={why} onChange={setWhy} maxLength={400} autoFocus />
      <FormFail problem={problem} doing="Taking it back" />
      <div className="row">
        <Button type="submit" busy={busy}>
          Take it back
        </Button>
        <Button look="quiet" onClick={() => setWhy(null)}>
          Keep it
        </Button>
      </div>
    </form>
  );
}
