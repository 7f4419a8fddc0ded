import type { PriceLine } from '@underlath/contract';
import { type FormEvent, useId, useState } from 'react';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { Select, TextInput } from '../../shared/ui/field.tsx';
import type { EstimateDraft, Replacement } from './estimate-draft.ts';
import { readNumber, writeNumber } from './numbers.ts';
import { unitWords } from './words.ts';

type QuantityDialogProps = {
  line: PriceLine;
  draft: EstimateDraft;
  onClose: () => void;
  onReplace: (repairId: string, replacement: Replacement) => void;
};

/** Replaces a measured quantity. The reason is asked for because it is read again in a dispute. */
export function QuantityDialog({ line, draft, onClose, onReplace }: QuantityDialogProps) {
  const formId = useId();
  const [typed, setTyped] = useState(writeNumber(line.quantity));
  const [why, setWhy] = useState('');
  const [repairId, setRepairId] = useState(draft.choices[0]?.repairId ?? '');
  const [tried, setTried] = useState(false);
  const value = readNumber(typed);
  const badValue = typeof value !== 'number' || value < 0;
  function submit(event: FormEvent) {
    event.preventDefault();
    setTried(true);
    if (badValue || why.trim() === '' || repairId === '') return;
    onReplace(repairId, { value, why: why.trim() });
  }
  return (
    <Dialog
      open
      title={`Quantity: ${line.title.en}`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button look="go" type="submit" form={formId}>
            Replace it
          </Button>
        </>
      }
    >
      <form id={formId} className="stack" onSubmit={submit} noValidate>
        <TextInput
          label={`Quantity, ${unitWords(line.unit)}`}
          inputMode="decimal"
          className="number"
          value={typed}
          onChange={setTyped}
          error={tried && badValue ? `“${typed}” is not a quantity. Type a number, zero or more.` : undefined}
        />
        {draft.choices.length > 1 && (
          <Select
            label="In which repair"
            options={draft.choices.map((choice) => ({ value: choice.repairId, label: choice.repairId }))}
            value={repairId}
            onChange={setRepairId}
          />
        )}
        <TextInput
          label="Why"
          hint="Kept with the price: “measured again on site, Mar 4”."
          value={why}
          maxLength={400}
          onChange={setWhy}
          error={tried && why.trim() === '' ? 'A reason is needed; it is kept with the price.' : undefined}
        />
      </form>
    </Dialog>
  );
}
