import { type ChangeOrder, routes, type SentVersion } from '@underlath/contract';
import { useState } from 'react';
import { addressOf } from '../../shared/api/call.ts';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { FailState } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { LinkOnce } from '../desk/link-once.tsx';
import { Part } from '../desk/page.tsx';
import { orderReads } from './reads.ts';

const versionWords: Record<SentVersion['state'], string> = {
  sent: 'with the client',
  approved: 'approved',
  'part-approved': 'approved in part',
  declined: 'declined',
  replaced: 'replaced by a later version',
  'set-aside': 'set aside before it was answered',
};
const answerWords: Partial<Record<SentVersion['state'], string>> = {
  approved: 'Approved',
  'part-approved': 'Approved without the findings left out',
  declined: 'Declined',
};
const linkWords: Record<SentVersion['linkState'], string> = {
  live: 'link works',
  expired: 'link has expired',
  revoked: 'link was revoked',
};

/** What was sent, exactly: every version with its hash, its link and, when there is one, the decision. */
export function OrderVersions({ order }: { order: ChangeOrder }) {
  if (order.versions.length === 0) return null;
  const newest = order.versions.toSorted((a, b) => b.version - a.version);
  return (
    <Part title="Sent">
      <ul className="versions">
        {newest.map((version) => (
          <li key={version.version}>
            <VersionLine order={order} version={version} />
          </li>
        ))}
      </ul>
    </Part>
  );
}

function VersionLine({ order, version }: { order: ChangeOrder; version: SentVersion }) {
  const waiting = version.state === 'sent' && order.state === 'sent';
  const params = { changeOrderId: order.id, sentVersion: version.version };
  return (
    <div className="version">
      <p>
        <b>Version {version.version}</b>, {versionWords[version.state]}. Sent{' '}
        <Stamp at={version.sentAt} look="day-time" /> by {version.sentBy.name}
        {waiting && (
          <>
            ; {linkWords[version.linkState]}
            {version.linkExpiresAt && version.linkState === 'live' && (
              <>
                {' '}
                until <Stamp at={version.linkExpiresAt} />
              </>
            )}
          </>
        )}
        .{waiting && order.draft.parts && ' The client may leave out single findings.'}
      </p>
      {version.decision && <DecisionWords order={order} version={version} />}
      {version.decision && <p>It stays readable by every link of this version, and takes no other answer.</p>}
      <p className="soft small">
        SHA-256 <span className="hash">{version.sha256}</span>
      </p>
      <div className="row">
        <a
          className={buttonClass('plain')}
          href={addressOf(routes.getSentPdf, { params, query: {} })}
          download={`change-order-${order.number}-v${version.version}.pdf`}
        >
          Download the PDF
        </a>
        {waiting && <LinkActions order={order} live={version.linkState === 'live'} />}
        {version.decision && <LinkActions order={order} live={false} answered />}
      </div>
    </div>
  );
}

function DecisionWords({ order, version }: { order: ChangeOrder; version: SentVersion }) {
  const { decision } = version;
  if (!decision) return null;
  return (
    <div className="decision">
      <p>
        <b>{answerWords[version.state]}</b> by {decision.signerName}, <Stamp at={decision.decidedAt} look="day-time" />.
      </p>
      {decision.letterFor && (
        <p>The letter is for {decision.letterFor}; the signer was asked and confirmed the other name.</p>
      )}
      {version.state === 'part-approved' && (
        <p>To be done: {order.draft.items.map(({ number, title }) => `${number}. ${title}`).join('; ')}.</p>
      )}
      {decision.reason && <p>“{decision.reason}”</p>}
      {decision.acknowledged && (
        <p>
          Ticked: “<span lang={decision.locale}>{decision.acknowledged}</span>”
        </p>
      )}
      <details>
        <summary>{decision.consentText === null ? 'What was declined' : 'What was agreed to'}</summary>
        {decision.consentText !== null && <p lang={decision.locale}>{decision.consentText}</p>}
        <p className="soft small">
          For the document with SHA-256 <span className="hash">{decision.sha256}</span>
        </p>
      </details>
    </div>
  );
}

type LinkActionsProps = {
  order: ChangeOrder;
  live: boolean /** A link to an answered letter is for reading. */;
  answered?: boolean;
};

function LinkActions({ order, live, answered = false }: LinkActionsProps) {
  const announce = useAnnounce();
  const [asking, setAsking] = useState(false);
  const renew = useChange(routes.renewClientLink, { invalidates: orderReads });
  const revoke = useChange(routes.revokeClientLink, {
    invalidates: orderReads,
    onDone: () => {
      setAsking(false);
      announce('The link is revoked.');
    },
  });
  const params = { changeOrderId: order.id };
  const failed = renew.error ?? revoke.error;
  return (
    <>
      <Button busy={renew.isPending} onClick={() => renew.mutate({ params, body: {} })}>
        {answered ? 'New link to read it' : 'New link'}
      </Button>
      {live && (
        <Button look="quiet" onClick={() => setAsking(true)}>
          Revoke the link
        </Button>
      )}
      {failed && <FailState problem={problemOf(failed)} doing="Changing the link" />}
      <Dialog
        open={asking}
        title="Revoke the client’s link?"
        onClose={() => setAsking(false)}
        actions={
          <>
            <Button onClick={() => setAsking(false)}>Keep it</Button>
            <Button look="go" busy={revoke.isPending} onClick={() => revoke.mutate({ params })}>
              Revoke it
            </Button>
          </>
        }
      >
        <p>
          The client can no longer open the letter or decide on it until you make a new link. Once a letter has been
          answered it stays readable, whatever becomes of its link.
        </p>
      </Dialog>
      <Dialog
        open={renew.data !== undefined}
        title="A new link"
        onClose={() => renew.reset()}
        actions={
          <Button look="go" onClick={() => renew.reset()}>
            Done
          </Button>
        }
      >
        {renew.data && (
          <LinkOnce
            link={renew.data.link}
            what={`${renew.data.mailedTo ? `It goes out by e-mail to ${renew.data.mailedTo}.` : 'Hand it to the client yourself.'} ${
              answered
                ? 'It opens the answered letter to read; the earlier links still do.'
                : 'Earlier links to this change order are dead now.'
            }`}
          />
        )}
      </Dialog>
    </>
  );
}
