import type { ChangeOrder, ClientLetter } from '@underlath/contract';
import { type ReactNode, useState } from 'react';
import { createPortal } from 'react-dom';
import clientLook from '../../client/client.css?url';
import { LetterScreen } from '../../client/letter/letter-screen.tsx';
import { chosenIn } from '../../client/letter/letter-text.ts';
import { type PhotoAddress, PhotoAddressContext } from '../../client/letter/photo-address.ts';
import { photoThumbUrl, photoViewUrl } from '../../shared/api/photos.ts';
import drawingLook from '../../shared/drawing/drawing.css?url';
import { LocaleScope } from '../../shared/i18n/locale.tsx';
import baseLook from '../../shared/look/base.css?url';
import uiLook from '../../shared/ui/ui.css?url';
import './change-order.css';

const looks = [baseLook, uiLook, drawingLook, clientLook];
const officePhoto: PhotoAddress = (id, size) => (size === 'thumb' ? photoThumbUrl(id) : photoViewUrl(id));
const nothing = () => {};

/** The client's own page, of what would be sent now or was sent last, as wide as a phone. It can be read, not answered. */
export function LetterPreview({ order }: { order: ChangeOrder }) {
  const letter = letterOf(order);
  return (
    <div className="letter-preview">
      <p className="soft">{readBy(order)}</p>
      <Frame title={`Change order ${order.number} as the client reads it`}>
        <PhotoAddressContext value={officePhoto}>
          <LocaleScope initial={order.clientLocale}>
            <main className="letter">
              <LetterScreen
                letter={letter}
                chosen={chosenIn(letter, [])}
                leftOut={[]}
                onLeaveOut={nothing}
                onAskFor={nothing}
                block={null}
                go={nothing}
                onClosed={nothing}
                preview
              />
            </main>
          </LocaleScope>
        </PhotoAddressContext>
      </Frame>
    </div>
  );
}

function readBy({ state }: ChangeOrder): string {
  if (state === 'draft') return 'As the client would read it if you sent it now.';
  if (state === 'sent') return 'As the client reads it.';
  if (state === 'set-aside') return 'As it was. It was set aside, and nobody can open it.';
  return 'As it was sent. The client’s page begins with the answer now, and takes no other.';
}

/** What was sent last as it was sent; of a draft the moment of sending is made up: now, for two weeks. */
function letterOf({ draft, questions, versions, state, clientLocale: locale }: ChangeOrder): ClientLetter {
  const sent = state === 'draft' ? undefined : versions.find(({ version }) => version === draft.version);
  const now = Date.now();
  const document = {
    ...draft,
    sentAt: sent?.sentAt ?? new Date(now).toISOString(),
    sentBy: sent?.sentBy.name ?? draft.company.name,
    expiresAt: sent?.linkExpiresAt ?? new Date(now + 14 * 86_400_000).toISOString(),
    record: { seq: 0, hash: '' },
  };
  return {
    ...{ letterId: '', document, sha256: '', state: 'open', decision: null, answeredHere: false, questions, locale },
    timeZone: document.project.timeZone ?? null,
    answerBy: document.expiresAt,
    contract: standingOf(draft),
  };
}

/** The contract as the draft counts it, which is as it stands now. */
function standingOf({ contract, parts = [] }: ChangeOrder['draft']): ClientLetter['contract'] {
  const effectOf = (effect: ChangeOrder['draft']['contract']) => {
    const { afterCents: sumCents, daysAfter: days, finishAfter: finishOn } = effect;
    return { contract: effect, withWaiting: { sumCents, days, finishOn } };
  };
  const { beforeCents: sumCents, daysBefore: days, finishBefore: finishOn } = contract;
  return {
    ...{ ledger: '', hasMoved: false, moves: [], isTimeCountedAnew: false, waiting: [] },
    whole: effectOf(contract),
    parts: parts.map((part) => ({ findingIds: part.findingIds, ...effectOf(part.contract) })),
    told: { sumCents, days, finishOn },
  };
}

/** A page within the page, with a width and a look of its own, in which the same tree goes on. */
function Frame({ title, children }: { title: string; children: ReactNode }) {
  const [body, setBody] = useState<HTMLElement | null>(null);
  return (
    <>
      {/* Some browsers put a new document into an empty frame once it has loaded. */}
      <iframe
        title={title}
        ref={(frame) => setBody(frame?.contentDocument?.body ?? null)}
        onLoad={(event) => setBody(event.currentTarget.contentDocument?.body ?? null)}
      />
      {body &&
        createPortal(
          <>
            {looks.map((href) => (
              <link key={href} rel="stylesheet" href={href} />
            ))}
            {children}
          </>,
          body,
        )}
    </>
  );
}
