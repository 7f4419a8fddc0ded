import { type ChangeOrderDocument, sectionOf } from '@underlath/contract';
import { useT } from '../shared/i18n/locale.tsx';
import { letterWords } from '../shared/i18n/messages/letter.ts';
import { SeverityShape } from '../shared/ui/severity.tsx';
import { telephoneLink, unbroken } from './letter/letter-text.ts';
import { Inline } from './words.tsx';

type MakeSafeProps = {
  document: ChangeOrderDocument;
  /** Beside a form: the place only, so that the form is not pushed out of sight. */
  brief?: boolean;
};

/** Stands before everything else when any finding must be made safe, on every step. */
export function MakeSafe({ document, brief }: MakeSafeProps) {
  const t = useT(letterWords);
  const section = sectionOf(document, 'make-safe');
  if (!section) return null;
  const places = section.lines.filter((line) => line.atSigning);
  const more = section.lines.filter((line) => !line.atSigning);
  const { phone, name } = document.company;
  return (
    <section className={brief ? 'make-safe make-safe-brief keeps-colour' : 'make-safe keeps-colour'}>
      <h2>
        <SeverityShape severity="make-safe" size={34} />
        <Inline text={section.title} />
      </h2>
      <div className="make-safe-body">
        {places.map(({ words }) => (
          <p key={words.en} className="make-safe-where">
            <Inline text={words} />
          </p>
        ))}
        {!brief &&
          more.map(({ words, term }) => (
            <div key={words.en}>
              {term && (
                <p className="soft">
                  <Inline text={term} />:
                </p>
              )}
              <p>
                <Inline text={words} />
              </p>
            </div>
          ))}
        {!brief && phone && (
          <a className="button" href={telephoneLink(phone)}>
            {t('makeSafeCallNumber', { company: name, phone: unbroken(phone) })}
          </a>
        )}
      </div>
    </section>
  );
}
