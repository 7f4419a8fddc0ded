import type { ClientLetter } from '@underlath/contract';
import { useState } from 'react';
import { LocaleProvider, readStoredLocale, startingLocale, useT } from '../shared/i18n/locale.tsx';
import { letterWords } from '../shared/i18n/messages/letter.ts';
import { SiteZone } from '../shared/i18n/site-zone.tsx';
import { StatusProvider, useAnnounce } from '../shared/ui/status.tsx';
import { AskScreen } from './decision/ask-screen.tsx';
import { DeclineScreen } from './decision/decline-screen.tsx';
import { ReviewScreen } from './decision/review-screen.tsx';
import { useDecisionDraft } from './decision/use-draft.ts';
import { LetterId } from './letter/letter-id.ts';
import { LetterScreen } from './letter/letter-screen.tsx';
import { chosenIn } from './letter/letter-text.ts';
import { useLetter } from './letter/use-letter.ts';
import { type Block, type ClientKey, findBlock } from './problem-words.ts';
import { Said } from './said.tsx';
import { useOnline } from './use-online.ts';
import { usePageTitle } from './use-page-title.ts';
import { useReturnToPlace } from './use-return.ts';
import { type LetterStep, useStep } from './use-step.ts';
import { BlockedScreen, FailedScreen, LoadingScreen } from './waiting-screens.tsx';

/** One page: the letter behind the link, or why there is none. */
export function ClientPage() {
  const { letter, error, nowhere, retry, retrying } = useLetter();
  const block = nowhere ? 'no-link' : findBlock(error);
  if (letter) {
    // The letter's language is the default; a choice made on this device goes before it.
    const locale = startingLocale(readStoredLocale(), [letter.locale]);
    return (
      <LocaleProvider key={letter.letterId} initial={locale}>
        {/* Its days are days at the house; where its clock is not known they are told in UTC, and say so. */}
        <SiteZone zone={letter.timeZone ?? 'UTC'}>
          <LetterId value={letter.letterId}>
            <StatusProvider>
              <OpenLetter letter={letter} block={block} />
            </StatusProvider>
          </LetterId>
        </SiteZone>
      </LocaleProvider>
    );
  }
  if (block) return <BlockedScreen block={block} error={error} />;
  if (error) return <FailedScreen error={error} retry={retry} retrying={retrying} />;
  return <LoadingScreen />;
}

function OpenLetter({ letter, block }: { letter: ClientLetter; block: Block | null }) {
  const t = useT(letterWords);
  const announce = useAnnounce();
  const online = useOnline();
  const [closed, setClosed] = useState(false);
  const { step, go, back } = useStep();
  const { draft, change, forget } = useDecisionDraft(letter.letterId);
  const answerable = letter.state === 'open' && block === null;
  const shown = answerable ? step : 'letter';
  const leave = useReturnToPlace(shown, answerable);
  usePageTitle(t('pageTitle', { number: letter.document.number, company: letter.document.company.name }));
  if (closed) return <BlockedScreen block="closed" />;
  const close = () => {
    forget();
    setClosed(true);
  };
  const decided = (words: ClientKey) => () => {
    announce(<Said words={words} />);
    back();
  };
  const open = (next: LetterStep) => {
    leave();
    go(next);
  };
  const chosen = chosenIn(letter, answerable ? draft.leftOut : []);
  const answer = { letter, chosen, draft, change, onBack: back };
  return (
    <>
      {!online && (
        <p className="offline-strip no-print" role="status">
          {t('offlineStrip')}
        </p>
      )}
      {/* The letter stays behind a step, so that what was opened in it is still open on the way back. */}
      <div hidden={shown !== 'letter'}>
        <LetterScreen
          letter={letter}
          chosen={chosen}
          leftOut={draft.leftOut}
          onLeaveOut={(leftOut) => change({ leftOut })}
          onAskFor={(question) => {
            // What was typed before stays in front of it.
            change({ question: [draft.question.trim(), question].filter(Boolean).join('\n') });
            open('ask');
          }}
          block={block}
          go={open}
          onClosed={close}
        />
      </div>
      {shown === 'review' && <ReviewScreen {...answer} onDecided={decided('approvedStatus')} />}
      {shown === 'decline' && <DeclineScreen {...answer} onDecided={decided('declinedStatus')} />}
      {shown === 'ask' && <AskScreen {...answer} />}
    </>
  );
}
