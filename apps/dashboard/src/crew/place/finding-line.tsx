import { Link } from '@tanstack/react-router';
import type { FindingRow } from '@underlath/contract';
import { FINDING_WORDS, say } from '@underlath/rules/kernel';
import { photoThumbUrl } from '../../shared/api/photos.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { Money } from '../../shared/ui/money.tsx';
import { SeverityMark, VerdictWord } from '../../shared/ui/severity.tsx';
import { findingTitle } from '../finding/finding-title.ts';

/** One finding in a list: its number on the drawing, how grave it is, what it is, its first photo. */
export function FindingLine({ finding }: { finding: FindingRow }) {
  const { locale } = useLocale();
  const t = useT(crewWords);
  const photo = finding.photos.find((candidate) => candidate.derivative === 'ready');
  return (
    <li>
      <Link to="/crew/findings/$findingId" params={{ findingId: finding.id }} className="line">
        <span className="line-number">{finding.number}</span>
        <span className="line-words">
          <b>{findingTitle(finding, locale)}</b>
          <span>{finding.severity ? <SeverityMark severity={finding.severity} /> : t('notMeasured')}</span>
          <span className="soft">
            {finding.verdict && <VerdictWord verdict={finding.verdict} />} · {say(FINDING_WORDS[finding.state], locale)}
            {finding.linesCents !== null && (
              <>
                {' · '}
                <Money cents={finding.linesCents} trim />
              </>
            )}
          </span>
        </span>
        {photo && <img className="line-photo" src={photoThumbUrl(photo.id)} alt="" loading="lazy" />}
      </Link>
    </li>
  );
}
