import { type BodyIn, type Finding, type FindingRow, routes } from '@underlath/contract';
import { type FormEvent, useId, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { TextArea } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { findingStateWord } from '../desk/words.ts';

/** Routes that show something of a finding. */
export const findingReads = [
  routes.getFinding,
  routes.listFindings,
  routes.projectOverview,
  routes.listLocations,
  routes.getEstimate,
  routes.getEstimateRange,
  routes.getNotice,
];

type Move = BodyIn<typeof routes.moveFinding>['state'];

const words: Record<Move, { title: string; lead: string; reason: string; go: string }> = {
  withdrawn: {
    title: 'Withdraw this finding?',
    lead: 'It stays in the record with your reason, and is no longer open, priced or offered.',
    reason: 'Why it is withdrawn',
    go: 'Withdraw it',
  },
  repaired: {
    title: 'Mark it repaired?',
    lead: 'The work is done. It is proven only when a new measurement meets the rule and a photo before cover is there.',
    reason: 'Note on the repair',
    go: 'Mark repaired',
  },
  proven: {
    title: 'Mark it proven?',
    lead: 'A measurement after the repair meets the rule, and a photo before cover is attached. Then it may be covered.',
    reason: 'Note',
    go: 'Mark proven',
  },
};

/** The moves that make sense from where it stands; the server has the last word and says why not. */
function movesOf(state: FindingRow['state']): Move[] {
  if (state === 'withdrawn' || state === 'proven') return [];
  if (state === 'repaired') return ['proven'];
  if (state === 'approved') return ['repaired'];
  return ['repaired', 'withdrawn'];
}

export function FindingMoves({ finding }: { finding: Finding }) {
  const [move, setMove] = useState<Move | null>(null);
  const moves = movesOf(finding.state);
  if (moves.length === 0) return null;
  return (
    <>
      <p className="row">
        {moves.map((each) => (
          <Button key={each} look={each === 'withdrawn' ? 'quiet' : 'plain'} onClick={() => setMove(each)}>
            {words[each].go}
          </Button>
        ))}
      </p>
      {move && <MoveDialog finding={finding} move={move} onClose={() => setMove(null)} />}
    </>
  );
}

function MoveDialog({ finding, move, onClose }: { finding: Finding; move: Move; onClose: () => void }) {
  const formId = useId();
  const announce = useAnnounce();
  const [reason, setReason] = useState('');
  const change = useChange(routes.moveFinding, {
    invalidates: findingReads,
    onDone: (moved) => {
      announce(`${moved.title}: ${findingStateWord(moved.state).toLowerCase()}`);
      onClose();
    },
  });
  const problem = change.error ? problemOf(change.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    change.mutate({ params: { findingId: finding.id }, body: { state: move, reason }, ifMatch: finding.version });
  }
  return (
    <Dialog
      open
      title={words[move].title}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button look="go" type="submit" form={formId} busy={change.isPending}>
            {words[move].go}
          </Button>
        </>
      }
    >
      <form id={formId} className="stack" onSubmit={submit} noValidate>
        <p>{words[move].lead}</p>
        <TextArea
          label={words[move].reason}
          optional={move !== 'withdrawn'}
          value={reason}
          onChange={setReason}
          maxLength={1000}
          error={errorAt(problem, '/reason')}
        />
        <FormFail problem={problem} doing={words[move].go} />
      </form>
    </Dialog>
  );
}
