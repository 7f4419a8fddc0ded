import { useNavigate } from '@tanstack/react-router';
import { routes } from '@underlath/contract';
import type { ReactNode } from 'react';
import { useRoute } from '../../shared/api/hooks.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { editionsOf } from '../../shared/measure/editions.ts';
import { useAnnounce } from '../../shared/ui/status.tsx';
import type { DraftStep, FindingDraft } from '../outbox/draft.ts';
import { useOutbox } from '../outbox/use-outbox.tsx';

/** What every step of a new finding is given. */
export type StepProps = {
  draft: FindingDraft;
  /** Changes the draft, on the phone first. */
  change: (change: Partial<FindingDraft>) => void;
  go: (step: DraftStep, question?: number) => void;
  back: ReactNode;
};

/** Marks the draft as done, goes back to its place, and says that it is on its way. */
export function useFinishDraft() {
  const t = useT(crewWords);
  const outbox = useOutbox();
  const navigate = useNavigate();
  const announce = useAnnounce();
  return async (draft: FindingDraft) => {
    await outbox.putDraft({ ...draft, ready: true, problem: null });
    announce(t('savedSending'));
    void outbox.send();
    await navigate({
      to: '/crew/$projectId/places/$locationId',
      params: { projectId: draft.projectId, locationId: draft.locationId ?? '' },
      replace: true,
    });
  };
}

/** The places of the draft's project and, once chosen, the draft's own. */
export function useDraftPlace(draft: FindingDraft) {
  const places = useRoute(routes.listLocations, { params: { projectId: draft.projectId } });
  return { places, place: places.data?.items.find((place) => place.id === draft.locationId) };
}

/** The editions the draft's project is judged under, none while they have not been read. */
export function useDraftEditions(draft: FindingDraft): readonly string[] {
  const project = useRoute(routes.getProject, { params: { projectId: draft.projectId } });
  return editionsOf(project.data);
}
