import { useNavigate } from '@tanstack/react-router';
import { v7 } from 'uuid';
import { newFindingDraft } from '../outbox/draft.ts';
import { useOutbox } from '../outbox/use-outbox.tsx';

/** Begins a finding: its id is made here and stays its id for good. */
export function useStartFinding() {
  const outbox = useOutbox();
  const navigate = useNavigate();
  return async (projectId: string, locationId: string | null) => {
    const draft = newFindingDraft({ id: v7(), sendKey: v7(), projectId, locationId, now: new Date().toISOString() });
    await outbox.putDraft(draft);
    await navigate({ to: '/crew/new/$draftId', params: { draftId: draft.id } });
  };
}
