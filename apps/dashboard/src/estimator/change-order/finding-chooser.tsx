import type { FindingRow } from '@underlath/contract';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { SeverityMark } from '../../shared/ui/severity.tsx';
import './change-order.css';

type FindingChooserProps = {
  rows: readonly FindingRow[];
  chosen: readonly string[];
  onToggle: (findingId: string, on: boolean) => void;
};

/** Findings with a price to tick, with their lines alone. */
export function FindingChooser({ rows, chosen, onToggle }: FindingChooserProps) {
  return (
    <ul className="chooser">
      {rows.map((row) => (
        <li key={row.id}>
          <Checkbox
            label={
              <span className="chooser-line">
                <span>{row.title}</span>
                {row.linesCents !== null && <Money cents={row.linesCents} />}
              </span>
            }
            detail={
              <span className="chooser-line">
                <span>
                  {row.severity && <SeverityMark severity={row.severity} />} {row.locationName}
                </span>
                <span>{row.state === 'declined' && 'declined before · '}lines alone, before overhead and profit</span>
              </span>
            }
            checked={chosen.includes(row.id)}
            onChange={(on) => onToggle(row.id, on)}
          />
        </li>
      ))}
    </ul>
  );
}
