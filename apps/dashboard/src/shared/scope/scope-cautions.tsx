import type { PlaceScope } from '@underlath/contract';
import { useT } from '../i18n/locale.tsx';
import { scopeWords } from '../i18n/messages/scope.ts';
import { SeverityNote } from '../ui/severity.tsx';

/** What comes before the steps: making safe, and what the list is not. */
export function ScopeCautions({ plan }: { plan: PlaceScope }) {
  const t = useT(scopeWords);
  const unsafe = plan.findings.some(({ severity }) => severity === 'make-safe');
  return (
    <>
      {unsafe && (
        <SeverityNote severity="make-safe">
          <p>{t('makeSafeFirst')}</p>
        </SeverityNote>
      )}
      <p className="soft">{plan.scope.cautions.join(' ')}</p>
    </>
  );
}
