import { Link, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import type { Check } from '@underlath/rules/kernel';
import type { ReactNode } from 'react';
import { useT } from '../../shared/i18n/locale.tsx';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { WithCheck } from '../../shared/measure/with-check.tsx';
import { buttonClass } from '../../shared/ui/button.tsx';
import { EmptyState, LoadingRows } from '../../shared/ui/states.tsx';
import { BackWords, CrewFrame } from '../crew-frame.tsx';
import { type DraftStep, draftSteps, type FindingDraft } from '../outbox/draft.ts';
import { useOutbox, useOutboxState } from '../outbox/use-outbox.tsx';
import { MeasureStep } from './measure-step.tsx';
import { PhotoStep } from './photo-step.tsx';
import type { StepProps } from './step.ts';
import { VerdictStep } from './verdict-step.tsx';
import { WhatStep } from './what-step.tsx';
import { WhereStep } from './where-step.tsx';

/** A new finding, one question a screen: photo, where, what, measure, verdict. A reload goes on where it was. */
export function CrewNewFindingScreen() {
  const { draftId } = useParams({ strict: false }) as { draftId: string };
  const { loaded, drafts } = useOutboxState();
  const draft = drafts.find((candidate) => candidate.id === draftId);
  if (!loaded) {
    return (
      <CrewFrame>
        <LoadingRows rows={4} tall />
      </CrewFrame>
    );
  }
  return draft ? <DraftSteps draft={draft} /> : <Gone />;
}

function DraftSteps({ draft }: { draft: FindingDraft }) {
  const c = useT(commonWords);
  const outbox = useOutbox();
  const navigate = useNavigate();
  const search = useSearch({ strict: false }) as { step?: string; question?: string };
  // The address carries the step, so that the phone's own back button goes one question back.
  const step = draftSteps.find((candidate) => candidate === search.step) ?? draft.step;
  const question = search.question === undefined ? draft.question : Number(search.question) || 0;
  const here = { ...draft, step, question };
  const change = (next: Partial<FindingDraft>) =>
    void outbox.putDraft({ ...here, ...next, problem: null, ready: false });
  const go = (next: DraftStep, nextQuestion = 0) => {
    void outbox.putDraft({ ...here, ...latest(outbox.state().drafts, draft.id), step: next, question: nextQuestion });
    void navigate({
      to: '/crew/new/$draftId',
      params: { draftId: draft.id },
      search: { step: next, question: String(nextQuestion) },
    });
  };
  const back = <StepBack draft={here} go={go} label={c('back')} />;
  const props = { draft: here, change, go, back };
  switch (step) {
    case 'photo':
      return <PhotoStep {...props} />;
    case 'where':
      return <WhereStep {...props} />;
    case 'what':
      return <WhatStep {...props} />;
    case 'measure':
      return <OfCheck {...props}>{(check) => <MeasureStep {...props} check={check} />}</OfCheck>;
    case 'verdict':
      return <OfCheck {...props}>{(check) => <VerdictStep {...props} check={check} />}</OfCheck>;
  }
}

type OfCheckProps = StepProps & { children: (check: Check) => ReactNode };

/** A step that needs the check; without one that this version knows, what it is has to be picked first. */
function OfCheck({ children, ...props }: OfCheckProps) {
  return (
    <WithCheck
      id={props.draft.checkId ?? ''}
      unknown={<WhatStep {...props} />}
      frame={(body) => <CrewFrame back={props.back}>{body}</CrewFrame>}
    >
      {children}
    </WithCheck>
  );
}

/** What the outbox holds now: a change and the step after it may come in one press. */
const latest = (drafts: readonly FindingDraft[], id: string): Partial<FindingDraft> =>
  drafts.find((draft) => draft.id === id) ?? {};

function StepBack({ draft, go, label }: { draft: FindingDraft; go: StepProps['go']; label: string }) {
  const t = useT(crewWords);
  if (draft.step === 'photo') {
    return (
      <Link to="/crew/$projectId" params={{ projectId: draft.projectId }} className="crew-back">
        <BackWords>{t('places')}</BackWords>
      </Link>
    );
  }
  const previous = draftSteps[draftSteps.indexOf(draft.step) - 1] ?? 'photo';
  // One question back within measuring; within the pictures, back to the parts of the house.
  const within = draft.question > 0 && draft.step === 'measure' ? draft.question - 1 : 0;
  const stays = draft.question > 0 && (draft.step === 'measure' || draft.step === 'what');
  return (
    <button type="button" className="crew-back" onClick={() => (stays ? go(draft.step, within) : go(previous))}>
      <BackWords>{label}</BackWords>
    </button>
  );
}

function Gone() {
  const t = useT(crewWords);
  return (
    <CrewFrame>
      <EmptyState
        title={t('notFoundHere')}
        action={
          <Link to="/crew" className={buttonClass('go')}>
            {t('myProjects')}
          </Link>
        }
      >
        <p>{t('notFoundHelp')}</p>
      </EmptyState>
    </CrewFrame>
  );
}
