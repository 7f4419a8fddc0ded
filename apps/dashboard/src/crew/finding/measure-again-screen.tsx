import { Link, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import { type Finding, routes } from '@underlath/contract';
import type { Check } from '@underlath/rules/kernel';
import { useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { measureWords } from '../../shared/i18n/messages/measure.ts';
import { CheckSteps } from '../../shared/measure/check-form.tsx';
import { askedInputs, type Inputs } from '../../shared/measure/form.ts';
import { WithCheck } from '../../shared/measure/with-check.tsx';
import { Button } from '../../shared/ui/button.tsx';
import { FailState, LoadingRows } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { BackWords, CrewFrame } from '../crew-frame.tsx';
import { findingTitle } from './finding-title.ts';
import { readKept, useKeptMeasure } from './kept-measure.ts';

/** Takes the measurements of a finding again; the earlier ones stay on record. */
export function MeasureAgainScreen() {
  const { findingId } = useParams({ strict: false }) as { findingId: string };
  const t = useT(crewWords);
  const reading = useRoute(routes.getFinding, { params: { findingId } });
  if (reading.data) {
    const finding = reading.data;
    return (
      <WithCheck id={finding.checkId} frame={(body) => <CrewFrame>{body}</CrewFrame>}>
        {(check) => <Measure finding={finding} check={check} />}
      </WithCheck>
    );
  }
  return (
    <CrewFrame>
      {reading.error ? (
        <FailState
          problem={problemOf(reading.error)}
          doing={t('reading', { what: t('theFinding') })}
          onRetry={() => reading.refetch()}
          retrying={reading.isFetching}
        />
      ) : (
        <LoadingRows rows={4} tall />
      )}
    </CrewFrame>
  );
}

function Measure({ finding, check }: { finding: Finding; check: Check }) {
  const t = useT(crewWords);
  const m = useT(measureWords);
  const { locale } = useLocale();
  const announce = useAnnounce();
  const navigate = useNavigate();
  const search = useSearch({ strict: false }) as { question?: string };
  const last = finding.judgments.toSorted((a, b) => b.seq - a.seq)[0];
  const [inputs, setInputs] = useState<Inputs>(() => readKept(finding.id) ?? last?.inputs ?? {});
  const kept = useKeptMeasure(finding.id, inputs);
  const at = Number(search.question) || 0;
  const question = (next: number) =>
    navigate({
      to: '/crew/findings/$findingId/measure',
      params: { findingId: finding.id },
      search: { question: String(next) },
    });
  const judge = useChange(routes.judgeFinding, {
    invalidates: [routes.getFinding, routes.listFindings, routes.listLocations, routes.listProjects],
    onDone: () => {
      kept.forget();
      announce(t('measureSaved'));
      void navigate({ to: '/crew/findings/$findingId', params: { findingId: finding.id }, replace: true });
    },
  });
  const save = () =>
    judge.mutate({
      params: { findingId: finding.id },
      body: { inputs: askedInputs(check.inputs, inputs), context: finding.context },
    });
  return (
    <CheckSteps
      check={check}
      inputs={inputs}
      onChange={setInputs}
      context={finding.context}
      step={at}
      onStep={question}
      onDone={save}
      doneLabel={t('saveMeasure')}
    >
      {({ body, foot, at: number, of }) => (
        <CrewFrame
          progress={m('step', { at: number, of })}
          back={
            number > 1 ? (
              <button type="button" className="crew-back" onClick={() => question(number - 2)}>
                <BackWords>{findingTitle(finding, locale)}</BackWords>
              </button>
            ) : (
              <Link to="/crew/findings/$findingId" params={{ findingId: finding.id }} className="crew-back">
                <BackWords>{findingTitle(finding, locale)}</BackWords>
              </Link>
            )
          }
          foot={
            judge.isPending ? (
              <Button look="go" wide busy>
                {t('saveMeasure')}
              </Button>
            ) : (
              foot
            )
          }
        >
          {body}
          {judge.error && (
            <FailState
              problem={problemOf(judge.error)}
              doing={t('savingMeasure')}
              onRetry={save}
              retrying={judge.isPending}
              kept
            />
          )}
        </CrewFrame>
      )}
    </CheckSteps>
  );
}
