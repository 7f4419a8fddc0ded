import type { ChangeOrderDocument, Text } from '@underlath/contract';
import { useT } from '../../shared/i18n/locale.tsx';
import { client } from '../../shared/i18n/messages/client.ts';
import { SeverityShape } from '../../shared/ui/severity.tsx';
import { Inline } from './words.tsx';

/** The first caution of a finding that must be made safe says what to do now. */
const firstCautions = (document: ChangeOrderDocument): { place: string; caution: Text | undefined }[] =>
  document.items
    .filter((item) => item.severity === 'make-safe')
    .map((item) => ({ place: item.place.name, caution: item.cautions[0] }));

/** Stands before everything else when any finding must be made safe, on every step. */
export function MakeSafe({ document }: { document: ChangeOrderDocument }) {
  const t = useT(client);
  const urgent = firstCautions(document);
  if (urgent.length === 0) return null;
  const places = [...new Set(urgent.map((each) => each.place))];
  const cautions = urgent.flatMap((each) => each.caution ?? []);
  const unique = cautions.filter((text, at) => cautions.findIndex((other) => other.en === text.en) === at);
  const { phone, name } = document.company;
  return (
    <section className="make-safe keeps-colour" aria-labelledby="make-safe">
      <h2 id="make-safe">
        <SeverityShape severity="make-safe" size={34} />
        {t('makeSafeTitle')}
      </h2>
      <div className="make-safe-body">
        <p className="make-safe-where">{t('makeSafeWhere', { place: places.join(', ') })}</p>
        {unique.map((caution) => (
          <p key={caution.en}>
            <Inline text={caution} />
          </p>
        ))}
        <p>{t('makeSafeCall')}</p>
        {phone && (
          <a className="button" href={`tel:${phone.replace(/[^+\d]/g, '')}`}>
            {t('makeSafeCallNumber', { company: name, phone })}
          </a>
        )}
      </div>
    </section>
  );
}
