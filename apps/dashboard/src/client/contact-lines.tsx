import type { ChangeOrderDocument } from '@underlath/contract';
import { useT } from '../shared/i18n/locale.tsx';
import { letterWords } from '../shared/i18n/messages/letter.ts';
import { telephoneLink, unbroken } from './letter/letter-text.ts';

type Company = ChangeOrderDocument['company'];

/** How to reach the contractor; nothing where neither phone nor e-mail is known. */
export function ContactLines({ company }: { company: Pick<Company, 'name' | 'phone' | 'email'> & Partial<Company> }) {
  const t = useT(letterWords);
  if (!company.phone && !company.email) return null;
  return (
    <section aria-labelledby="contact" className="contact">
      <h2 id="contact">{t('contactTitle')}</h2>
      <p>
        <b>{company.name}</b>
        {company.address && (
          <>
            <br />
            {company.address}
          </>
        )}
      </p>
      <ul className="contact-ways">
        {company.phone && (
          <li>
            <a href={telephoneLink(company.phone)}>{t('contactPhone', { phone: unbroken(company.phone) })}</a>
          </li>
        )}
        {company.email && (
          <li>
            <a href={`mailto:${company.email}`}>{t('contactEmail', { email: company.email })}</a>
          </li>
        )}
      </ul>
    </section>
  );
}
