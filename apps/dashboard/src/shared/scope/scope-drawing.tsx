import type { Location, PlaceScope, ScopeStep } from '@underlath/contract';
import { Elevation } from '../drawing/elevation.tsx';
import { Unspoken } from '../drawing/marks.tsx';
import { useT } from '../i18n/locale.tsx';
import { scopeWords } from '../i18n/messages/scope.ts';
import './scope.css';

type ScopeDrawingProps = { place: Location; plan: PlaceScope; step: ScopeStep | undefined; maxHeightPx?: number };

/** The place with its findings; the area of the step in hand lights up. */
export function ScopeDrawing({ place, plan, step, maxHeightPx = 420 }: ScopeDrawingProps) {
  const t = useT(scopeWords);
  return (
    <div className="scope-drawing">
      <Elevation
        place={place}
        findings={plan.findings.map(({ id, number, title, severity, extent, included }) => ({
          id,
          number,
          title,
          severity,
          extent,
          closed: !included,
        }))}
        labels="numbers"
        maxHeightPx={maxHeightPx}
        under={(frame) => (
          <Unspoken>
            {step?.area?.map((rect) => (
              <rect key={`${rect.xIn} ${rect.yIn} ${rect.widthIn}`} className="scope-lit" {...frame.rect(rect)} />
            ))}
          </Unspoken>
        )}
      />
      <p className="scope-where" role="status">
        {step && (
          <>
            <b>{t('whereNow', { step: step.title })}</b>
            {step.members && step.members.length > 0 && <span>: {step.members.join(', ')}</span>}
            {!step.area?.length && !step.members?.length && <span>. {t('whereNone')}</span>}
          </>
        )}
      </p>
    </div>
  );
}
