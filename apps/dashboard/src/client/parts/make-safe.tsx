import type { ChangeOrderDocument } from '@underlath/contract';
import { useT } from '../../shared/i18n/locale.tsx';
import { client } from '../../shared/i18n/messages/letter.ts';
import { SeverityShape } from '../../shared/ui/severity.tsx';
import { makeSafeNow, telephoneLink, unbroken } from '../letter-text.ts';
import { Inline } from './words.tsx';

type MakeSafeProps = {
  document: ChangeOrderDocument;
  /** Beside a form: the place and the number only, so that the form is not pushed out of sight. */
  brief?: boolean;
};

/** Stands before everything else when any finding must be made safe, on every step. */
export function MakeSafe({ document, brief }: MakeSafeProps) {
  const t = useT(client);
  const { places, cautions } = makeSafeNow(document);
  if (places.length === 0) return null;
  const { phone, name } = document.company;
  return (
    <section className={brief ? 'make-safe make-safe-brief keeps-colour' : 'make-safe keeps-colour'}>
      <h2>
        <SeverityShape severity="make-safe" size={34} />
        {t('makeSafeTitle')}
      </h2>
      <div className="make-safe-body">
        <p className="make-safe-where">{t('makeSafeWhere', { place: places.join(', ') })}</p>
        {!brief && (
          <>
            <p>{t('makeSafeCall')}</p>
            {phone && (
              <a className="button" href={telephoneLink(phone)}>
                {t('makeSafeCallNumber', { company: name, phone: unbroken(phone) })}
              </a>
            )}
            <div>
              <p className="soft">{t('makeSafeCrew')}</p>
              {cautions.map((caution) => (
                <p key={caution.en}>
                  <Inline text={caution} />
                </p>
              ))}
            </div>
          </>
        )}
      </div>
    </section>
  );
}
