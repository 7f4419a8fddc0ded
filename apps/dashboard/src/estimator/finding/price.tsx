import { Link } from '@tanstack/react-router';
import { type Finding, routes } from '@underlath/contract';
import { useRoute } from '../../shared/api/hooks.ts';
import { buttonClass } from '../../shared/ui/button.tsx';
import { Facts } from '../../shared/ui/facts.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { Reading } from '../desk/reading.tsx';
import { isClosed, plural } from '../desk/words.ts';

/** What its repair costs when it is done alone, and where the price is made. */
export function FindingPrice({ finding }: { finding: Finding }) {
  const estimate = useRoute(routes.getEstimate, { params: { findingId: finding.id } });
  const params = { projectId: finding.projectId, findingId: finding.id };
  if (finding.state === 'withdrawn') return null;
  return (
    <section>
      <h3>Repair and price</h3>
      <Reading query={estimate} doing="Reading the price" rows={2}>
        {({ saved, options, scope }) => {
          const chosen = options.filter((option) => option.chosen).map((option) => option.title.en);
          return (
            <Facts
              facts={[
                { name: 'Repair', value: chosen.length > 0 ? chosen.join('; ') : 'none chosen' },
                {
                  name: saved ? 'Price alone' : 'Suggested, alone',
                  value: <Money cents={scope.totalCents} />,
                  note: priceNote(scope.gaps.length, scope.placeholder),
                },
              ]}
            />
          );
        }}
      </Reading>
      <p className="row panel-actions">
        <Link
          to="/projects/$projectId/findings/$findingId/price"
          params={params}
          className={buttonClass(isClosed(finding.state) ? 'plain' : 'go')}
        >
          Scope and price
        </Link>
        {finding.changeOrderId && (
          <Link
            to="/projects/$projectId/change-orders/$changeOrderId"
            params={{ projectId: finding.projectId, changeOrderId: finding.changeOrderId }}
            className={buttonClass('plain')}
          >
            Its change order
          </Link>
        )}
      </p>
    </section>
  );
}

function priceNote(gaps: number, placeholder: boolean): string | undefined {
  const notes = [];
  if (gaps > 0) notes.push(`${plural(gaps, 'rate')} missing, not counted`);
  if (placeholder) notes.push('invented starter rates');
  return notes.length > 0 ? notes.join(' · ') : undefined;
}
