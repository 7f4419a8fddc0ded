import { Link, useParams } from '@tanstack/react-router';
import { type Finding, type Photo, type PhotoStage, routes } from '@underlath/contract';
import { FINDING_WORDS, PHOTO_STAGES, PHOTO_WORDS, say } from '@underlath/rules/kernel';
import { useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { photoThumbUrl, photoViewUrl } from '../../shared/api/photos.ts';
import { formatDate } from '../../shared/i18n/format.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { OutcomeView } from '../../shared/measure/outcome-view.tsx';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { Select } from '../../shared/ui/field.tsx';
import { SeverityMark, VerdictWord } from '../../shared/ui/severity.tsx';
import { FailState, LoadingRows } from '../../shared/ui/states.tsx';
import { BackWords, CrewFrame } from '../crew-frame.tsx';
import { findingTitle } from './finding-title.ts';
import { GivenInputs } from './given-inputs.tsx';
import { NoticeLine } from './notice-line.tsx';
import { PhotoTaker } from './photo-taker.tsx';

/** While the server still makes the small pictures, ask again after this long. */
const photoWaitMs = 2500;

/** One finding with its photos and every measurement it ever had. */
export function CrewFindingScreen() {
  const { findingId } = useParams({ strict: false }) as { findingId: string };
  const t = useT(crewWords);
  const [waiting, setWaiting] = useState(false);
  const reading = useRoute(routes.getFinding, { params: { findingId } }, { everyMs: waiting ? photoWaitMs : false });
  const finding = reading.data;
  const stillWaiting = finding?.photos.some((photo) => photo.derivative.state === 'waiting') ?? false;
  if (stillWaiting !== waiting) setWaiting(stillWaiting);
  return (
    <CrewFrame
      back={
        finding && (
          <Link
            to="/crew/$projectId/places/$locationId"
            params={{ projectId: finding.projectId, locationId: finding.locationId }}
            className="crew-back"
          >
            <BackWords>{finding.locationName}</BackWords>
          </Link>
        )
      }
      foot={
        finding &&
        finding.state !== 'withdrawn' && (
          <Link to="/crew/findings/$findingId/measure" params={{ findingId }} className={buttonClass('go', true)}>
            {t(finding.judgments.length > 0 ? 'measureAgain' : 'measureNow')}
          </Link>
        )
      }
    >
      {reading.error && !finding && (
        <FailState
          problem={problemOf(reading.error)}
          doing={t('reading', { what: t('theFinding') })}
          onRetry={() => reading.refetch()}
          retrying={reading.isFetching}
        />
      )}
      {reading.isPending && <LoadingRows rows={5} tall />}
      {finding && <FindingBody finding={finding} />}
    </CrewFrame>
  );
}

function FindingBody({ finding }: { finding: Finding }) {
  const t = useT(crewWords);
  const { locale, tag } = useLocale();
  const [latest, ...earlier] = finding.judgments.toSorted((a, b) => b.seq - a.seq);
  return (
    <>
      <div>
        <p className="soft">
          {t('finding', { number: finding.number })} · {say(FINDING_WORDS[finding.state], locale)}
        </p>
        <h1>{findingTitle(finding, locale)}</h1>
        <p className="soft">
          {t('seenBy', { when: formatDate(finding.seenAt, tag, 'day-time'), who: finding.createdBy.name })}
        </p>
      </div>
      {latest ? <OutcomeView outcome={latest.answer} sources="folded" /> : <p>{t('notMeasured')}</p>}
      <NoticeLine findingId={finding.id} />
      {latest && (
        <section>
          <h2>{t('latest')}</h2>
          <p className="soft">
            {t('measuredAt', { when: formatDate(latest.judgedAt, tag, 'day-time'), who: latest.judgedBy.name })}
          </p>
          <GivenInputs checkId={latest.checkId} inputs={latest.inputs} />
        </section>
      )}
      {finding.note && (
        <section>
          <h2>{t('note')}</h2>
          <p className="as-typed">{finding.note}</p>
        </section>
      )}
      <Photos finding={finding} />
      <Moves finding={finding} />
      {earlier.length > 0 && (
        <section>
          <h2>{t('earlier')}</h2>
          {earlier.map((judgment) => (
            <details key={judgment.id} className="earlier">
              <summary>
                <VerdictWord verdict={judgment.answer.verdict} restsOn={judgment.answer.restsOn} />,{' '}
                {formatDate(judgment.judgedAt, tag, 'day-time')}
              </summary>
              <p>
                <SeverityMark severity={judgment.answer.severity} />
              </p>
              <p>{judgment.answer.reasons[0]}</p>
              <GivenInputs checkId={judgment.checkId} inputs={judgment.inputs} />
            </details>
          ))}
        </section>
      )}
    </>
  );
}

function Photos({ finding }: { finding: Finding }) {
  const t = useT(crewWords);
  const { locale } = useLocale();
  const [stage, setStage] = useState<PhotoStage>(stageFor(finding));
  return (
    <section className="stack">
      <h2>{t('photos')}</h2>
      {finding.photos.length === 0 && <p className="soft">{t('noPhotos')}</p>}
      <ul className="photo-grid">
        {finding.photos.map((photo, at) => (
          <li key={photo.id}>
            <PhotoTile photo={photo} label={t('photoOf', { number: at + 1, title: findingTitle(finding, locale) })} />
            <span className="soft small">{say(PHOTO_WORDS[photo.stage], locale)}</span>
          </li>
        ))}
      </ul>
      <Select
        label={t('photoStageLabel')}
        value={stage}
        options={PHOTO_STAGES.map((each) => ({ value: each, label: say(PHOTO_WORDS[each], locale) }))}
        onChange={(value) => setStage(PHOTO_STAGES.find((each) => each === value) ?? 'found')}
      />
      <PhotoTaker
        projectId={finding.projectId}
        draftId={null}
        findingId={finding.id}
        locationId={finding.locationId}
        stage={stage}
      />
    </section>
  );
}

/** What a photo taken now most likely shows. */
function stageFor(finding: Finding): PhotoStage {
  if (finding.state === 'repaired' || finding.state === 'proven') return 'before-cover';
  return finding.state === 'approved' ? 'during' : 'found';
}

function PhotoTile({ photo, label }: { photo: Photo; label: string }) {
  const t = useT(crewWords);
  if (photo.derivative.state === 'ready') {
    return (
      <a href={photoViewUrl(photo.id)}>
        <img src={photoThumbUrl(photo.id)} alt={photo.caption || label} loading="lazy" />
      </a>
    );
  }
  return (
    <p className="photo-blank">
      {photo.derivative.state === 'waiting'
        ? t('photoWaiting')
        : t('photoFailed', { reason: photo.derivative.reason ?? '' })}
    </p>
  );
}

/** After approval: repaired, then proven. The server says what is still missing for it. */
function Moves({ finding }: { finding: Finding }) {
  const t = useT(crewWords);
  const move = useChange(routes.moveFinding, {
    invalidates: [routes.getFinding, routes.listFindings, routes.listLocations],
  });
  const next = finding.state === 'approved' ? 'repaired' : finding.state === 'repaired' ? 'proven' : null;
  if (!next) return null;
  return (
    <section className="stack">
      {next === 'proven' && <p>{t('markRepairedLead')}</p>}
      {move.error && <FailState problem={problemOf(move.error)} doing={t('marking')} />}
      <Button
        wide
        busy={move.isPending}
        onClick={() =>
          move.mutate({
            params: { findingId: finding.id },
            body: { state: next, reason: '' },
            ifMatch: finding.version,
          })
        }
      >
        {t(next === 'repaired' ? 'markRepaired' : 'markProven')}
      </Button>
    </section>
  );
}
