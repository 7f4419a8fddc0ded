import { type Contract, routes, type ContractTerms as Terms } from '@underlath/contract';
import { useState } from 'react';
import { useRoute } from '../../shared/api/hooks.ts';
import { formatDate } from '../../shared/i18n/format.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Facts } from '../../shared/ui/facts.tsx';
import { Part } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { plural } from '../desk/words.ts';
import { noticeMethodWord } from '../notice/words.ts';
import { useProjectId } from '../project/project-frame.tsx';
import { TermsForm } from './terms-form.tsx';

/** What the contract says, in short; and the form that changes it. */
export function TermsPart({ contract }: { contract: Contract }) {
  const projectId = useProjectId();
  const terms = useRoute(routes.getContractTerms, { params: { projectId } });
  const [editing, setEditing] = useState(false);
  return (
    <Part
      title="Terms"
      lead="As the signed contract says. Limits on retainage, notice and payments differ by state; check them with counsel."
      actions={terms.data && !editing && <Button onClick={() => setEditing(true)}>Change the terms</Button>}
    >
      <Reading query={terms} doing="Reading the terms" rows={6}>
        {(data) =>
          editing ? (
            <TermsForm terms={data} contract={contract} onClose={() => setEditing(false)} />
          ) : (
            <TermsFacts terms={data} />
          )
        }
      </Reading>
    </Part>
  );
}

function TermsFacts({ terms }: { terms: Terms }) {
  const { noticeDays, noticeDayKind, noticeMethods, daysOff, dayKind } = terms;
  return (
    <>
      {terms.version === 0 && <p className="notice">Nobody has written the terms yet; these stand in for them.</p>}
      <Facts
        facts={[
          { name: 'Retainage', value: terms.retainagePct === 0 ? 'none' : `${terms.retainagePct}%` },
          {
            name: 'A net saving gives back overhead and profit',
            value: terms.netDecreaseReturnsOverheadAndProfit ? 'yes' : 'no',
          },
          { name: 'Days are counted as', value: dayKind === 'working' ? 'working days' : 'calendar days' },
          {
            name: 'Days off',
            value: daysOff.length === 0 ? 'none' : daysOff.map((day) => formatDate(day, 'en-US')).join('; '),
          },
          {
            name: 'Notice of a hidden condition',
            value: noticeDays === null ? 'promptly' : `in ${plural(noticeDays, `${noticeDayKind} day`)}`,
            note:
              noticeMethods.length === 0
                ? 'The contract names no way.'
                : noticeMethods.map(noticeMethodWord).join(', '),
          },
        ]}
      />
    </>
  );
}
