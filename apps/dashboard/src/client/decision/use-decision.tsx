import { useQueryClient } from '@tanstack/react-query';
import { type ClientLetter, clientRoutes, isPersonName, isSameName, understoodAtDeclining } from '@underlath/contract';
import { useEffect, useRef, useState } from 'react';
import { isProblem, ProblemAnswer } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { letterKey } from '../letter/use-letter.ts';
import { Said } from '../said.tsx';
import { focusFirstInvalid } from '../step-frame.tsx';
import type { DecisionDraft } from './use-draft.ts';

interface Answer {
  readonly kind: 'approved' | 'declined';
  /** Of a part; undefined for all of it. */
  readonly findingIds?: readonly string[] | undefined;
}

/**
 * Sends one decision on exactly the version that was read. Pressing again after a failed send repeats the same decision
 * under the same key, so that it is made once. A name that is not the one the letter is for is asked about first.
 */
export function useDecision(
  letter: ClientLetter,
  { kind, findingIds }: Answer,
  draft: DecisionDraft,
  onDecided: () => void,
) {
  const t = useT(letterWords);
  const { locale } = useLocale();
  const [agreed, setAgreed] = useState(false);
  const [checked, setChecked] = useState(false);
  const [asksName, setAsksName] = useState(false);
  const [hasMoved, setHasMoved] = useState(false);
  // A second tap can come before the first is drawn as busy.
  const underway = useRef(false);
  const decide = useChange(clientRoutes.decide, {
    onDone: (decided, _given, queries) => {
      queries.setQueryData(letterKey(decided.letterId), decided);
      onDecided();
    },
  });
  // The tick was for another sum; what was typed stays.
  const onMoved = (error: Error) => {
    if (!isProblem(error, 'contract-moved')) return;
    setAgreed(false);
    setHasMoved(true);
  };
  useReadAgain(decide.error);
  const signerName = draft.name.trim();
  const refused = decide.error instanceof ProblemAnswer ? decide.error : null;
  // A refusal agrees to nothing; it says at most that what it leaves as it is was understood.
  const mustTick = kind === 'approved' || understoodAtDeclining(letter.document) !== null;
  const errors = {
    name: checked && !isPersonName(signerName) ? t('errorName') : refused?.at('/signerName'),
    consent:
      checked && mustTick && !agreed
        ? t(hasMoved ? 'errorConsentMoved' : 'errorConsent')
        : (refused?.at('/consent') ?? refused?.at('/acknowledged')),
    reason: refused?.at('/reason'),
  };

  function send() {
    setChecked(true);
    if (!isPersonName(signerName) || (mustTick && !agreed)) return focusFirstInvalid();
    if (isSameName(signerName, letter.document.project.clientName)) post(false);
    else setAsksName(true);
  }

  function post(nameConfirmed: boolean) {
    setAsksName(false);
    if (underway.current) return;
    underway.current = true;
    const ticked =
      kind === 'approved'
        ? ({ consent: true, consentId: letter.document.consent.id } as const)
        : { acknowledged: agreed, reason: draft.reason };
    const part = findingIds && { findingIds: [...findingIds] };
    const body = {
      kind,
      version: letter.document.version,
      ...part,
      sha256: letter.sha256,
      ledger: letter.contract.ledger,
      signerName,
      nameConfirmed,
      ...ticked,
      locale,
    } as const;
    decide.mutate(
      { params: { letterId: letter.letterId }, body },
      {
        onError: onMoved,
        onSettled: () => {
          underway.current = false;
        },
      },
    );
  }
  const nameQuestion = { open: asksName, onRight: () => post(true), onChange: () => setAsksName(false) };
  return { agreed, setAgreed, hasMoved, errors, send, nameQuestion, sending: decide.isPending, error: decide.error };
}

const REREAD = ['wrong-state', 'contract-moved', 'link-replaced', 'link-expired', 'link-revoked', 'not-signed-in'];

/** The letter was answered, replaced or closed by others: it is read again, and shows what became of it. */
function useReadAgain(error: Error | null): void {
  const queries = useQueryClient();
  const announce = useAnnounce();
  useEffect(() => {
    if (!(error instanceof ProblemAnswer)) return;
    const type: string = error.type;
    if (type === 'wrong-state') announce(<Said words="problemDecided" />);
    if (REREAD.includes(type)) {
      void queries.invalidateQueries({ queryKey: [clientRoutes.getClientLetter.name] });
    }
  }, [error, queries, announce]);
}
