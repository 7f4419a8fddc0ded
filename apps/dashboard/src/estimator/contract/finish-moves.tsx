import type { Contract } from '@underlath/contract';
import { addCalendarDays, addWorkingDays } from '@underlath/rules';
import { Stamp } from '../../shared/ui/stamp.tsx';

type FinishMovesProps = {
  contract: Contract;
  draft: { readonly dayKind: string; readonly daysOff: readonly { readonly day: string }[] };
};

/** Before terms are saved that count the days in another way: what that does to the finish, and what the client signed. */
export function FinishMoves({ contract, draft }: FinishMovesProps) {
  const { startOn, finishOn, currentDays, approved } = contract;
  if (startOn === null || finishOn === null) return null;
  const days = Math.max(0, currentDays);
  const daysOff = draft.daysOff.flatMap(({ day }) => (day === '' ? [] : day));
  const after = draft.dayKind === 'working' ? addWorkingDays(startOn, days, daysOff) : addCalendarDays(startOn, days);
  if (after === finishOn) return null;
  return (
    <div className="notice" role="status">
      <p>
        <b>
          With these terms the finish moves from <Stamp at={finishOn} look="long-day" /> to{' '}
          <Stamp at={after} look="long-day" />.
        </b>{' '}
        The contract keeps its {days} days; the start day is not counted.
      </p>
      {approved.length > 0 && (
        <p>
          The client has signed change orders that name a finish. What they signed stays as it is; put the new finish to
          the client in writing.
        </p>
      )}
    </div>
  );
}
