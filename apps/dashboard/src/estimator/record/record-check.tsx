import { useMutation } from '@tanstack/react-query';
import { type RecordCheck, routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { call } from '../../shared/api/call.ts';
import { problemOf } from '../../shared/api/errors.ts';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { FailState } from '../../shared/ui/states.tsx';
import { plural } from '../desk/words.ts';
import { readPrinted } from './printed-head.ts';

/** Verifies the record, and says whether it is still the one that a letter printed. */
export function RecordCheckForm({ projectId }: { projectId: string }) {
  const [printed, setPrinted] = useState('');
  const [error, setError] = useState<string>();
  const verify = useMutation({
    mutationFn: (query: { seq?: number; hash?: string }) => call(routes.verifyRecord, { params: { projectId }, query }),
    networkMode: 'always',
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const head = readPrinted(printed);
    setError(head ? undefined : 'Copy both: the number, a colon, and all 64 letters and digits after it.');
    if (head) verify.mutate(head);
  };
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <TextInput
        label="Project record, as a letter or a mail printed it"
        hint="For example 12: 3f9a… With it, an end that was cut off shows too."
        optional
        value={printed}
        error={error}
        onChange={setPrinted}
      />
      <div>
        <Button look="go" type="submit" busy={verify.isPending} busyLabel="Verifying…">
          Verify the record
        </Button>
      </div>
      <div aria-live="polite">
        {verify.error && (
          <FailState
            problem={problemOf(verify.error)}
            doing="Verifying"
            onRetry={() => verify.mutate(readPrinted(printed) ?? {})}
          />
        )}
        {verify.data && <VerifyResult result={verify.data} handed={verify.variables.seq} />}
      </div>
    </form>
  );
}

function VerifyResult({ result, handed }: { result: RecordCheck; handed: number | undefined }) {
  const { ok, events, faults, compared, witnesses, head } = result;
  const isTheOne = witnesses.handedAgreed === witnesses.handed;
  return (
    <div className="notice">
      <p>
        <b>
          {ok ? 'No fault in what was compared: ' : `${plural(faults.length, 'fault')} found in `}
          {`${plural(events, 'entry', 'entries')}, ${plural(compared.rows, 'row')} they made (${compared.moneyRows} of them money), ${plural(compared.documents, 'sent document')}, ${plural(compared.decisions, 'decision')}.`}
        </b>
      </p>
      {handed !== undefined && (
        <p>
          {isTheOne
            ? `Entry ${handed} is the one that your letter printed.`
            : `Entry ${handed} is not the one that your letter printed.`}
        </p>
      )}
      {faults.length > 0 && (
        <ul className="bulleted">
          {faults.map((fault) => (
            <li key={`${fault.seq}${fault.what}`}>
              {fault.seq !== null && <b>Entry {fault.seq}: </b>}
              {fault.what}
            </li>
          ))}
        </ul>
      )}
      <p className="soft small">{notCompared(result)}</p>
      <p className="soft small">{ends(result)}</p>
      <p className="soft small">
        Newest entry {head.seq}, hash <span className="hash">{head.hash}</span>.
      </p>
    </div>
  );
}

function notCompared({ untold, otherKinds }: RecordCheck): string {
  const parts = ['the bytes of photos (the command verify-record reads them)', 'people', 'links', 'mails'];
  for (const { what, rows } of untold) parts.push(`${what}, which the entries of ${plural(rows, 'row')} do not tell`);
  for (const kind of otherKinds) parts.push(`what entries of kind ${kind} made`);
  return `Not compared: ${parts.join('; ')}.`;
}

function ends({ witnesses }: RecordCheck): string {
  const { kept, keptAgreed, handedAgreed, newestSeq } = witnesses;
  if (keptAgreed + handedAgreed === 0)
    return 'Nothing outside of the database agrees with this record, so an end that was cut off would not show.';
  const places = kept > 0 ? `${keptAgreed} of ${plural(kept, 'place')} kept outside of the database agree. ` : '';
  return `${places}What came after entry ${newestSeq} could be cut off without showing.`;
}
