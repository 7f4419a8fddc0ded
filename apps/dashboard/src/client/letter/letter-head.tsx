import { type ChangeOrderDocument, type ClientLetter, sectionOf } from '@underlath/contract';
import { useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { useDate } from '../../shared/i18n/site-zone.tsx';
import { LanguageSwitch } from '../language-switch.tsx';
import { Lines } from '../section.tsx';
import { Inline } from '../words.tsx';

/** From whom, and the language: the first line of the page whatever follows. */
export function Letterhead({ company }: { company: ChangeOrderDocument['company'] }) {
  const t = useT(letterWords);
  return (
    <div className="letter-top">
      <p className="letter-from">
        <b>{company.name}</b>
        {company.licenseNumber && <span className="soft">{t('license', { number: company.licenseNumber })}</span>}
      </p>
      <LanguageSwitch />
    </div>
  );
}

/** About which house, which change order, and the headline. Once decided, the decision is the page's first heading. */
export function Subject({ letter }: { letter: ClientLetter }) {
  const t = useT(letterWords);
  const say = useDate();
  const { document, state } = letter;
  const { project } = document;
  const sent = t('sentOn', { date: say(document.sentAt, 'long-day'), name: document.sentBy });
  return (
    <header className="letter-head">
      <p className="soft">
        {t('forClient', { name: project.clientName })} · {project.siteAddress}
        <br />
        {t('orderVersion', { number: document.number, version: document.version })} · {sent}
      </p>
      {state === 'open' ? (
        <h1 tabIndex={-1}>
          <Inline text={document.wording.headline} />
        </h1>
      ) : (
        <h2 className="headline">
          <Inline text={document.wording.headline} />
        </h2>
      )}
      {state === 'open' && (
        <>
          <Lines lines={sectionOf(document, 'letter')?.lines ?? []} />
          <p>
            <b>{t('answerBy', { date: say(letter.answerBy, 'long-day') })}</b>
          </p>
        </>
      )}
    </header>
  );
}
