import type { Check, CheckEvidence } from '@underlath/rules';
import { say } from '@underlath/rules/kernel';
import { useLocale, useT } from '../shared/i18n/locale.tsx';
import { checksWords } from '../shared/i18n/messages/checks.ts';
import { CheckForm } from '../shared/measure/check-form.tsx';
import { ContextForm } from '../shared/measure/context-form.tsx';
import type { Shared } from '../shared/measure/share-link.ts';
import { useOutcome } from '../shared/measure/use-outcome.ts';
import { Button } from '../shared/ui/button.tsx';
import { Select } from '../shared/ui/field.tsx';
import { useAnnounce } from '../shared/ui/status.tsx';
import type { RunCase } from './cases.tsx';
import { ShareLink } from './share-link.tsx';
import { Working } from './working.tsx';

type TryCheckProps = {
  check: Check;
  evidence: CheckEvidence;
  cases: readonly RunCase[];
  shared: Shared;
  onChange: (shared: Shared) => void;
  onStart: (run: RunCase) => void;
  troubles: readonly string[];
  link: string;
};

/** The check's own form: the verdict and its working appear as one types, in the browser alone. */
export function TryCheck(props: TryCheckProps) {
  const { check, evidence, cases, shared, onChange, onStart, troubles, link } = props;
  const t = useT(checksWords);
  const { locale } = useLocale();
  const announce = useAnnounce();
  const { outcome } = useOutcome(check, shared.inputs, shared.context, shared.edition);
  const judgedUnder = check.editions.find(({ id }) => id === outcome?.edition);
  const clear = () => {
    onChange({ inputs: {}, context: {} });
    announce(t('cleared'));
  };
  return (
    <div className="try stack">
      <p className="soft">{t('tryLead')}</p>
      <LinkTroubles troubles={troubles} />
      <Select
        label={t('startFrom')}
        emptyLabel={t('startEmpty')}
        value=""
        options={cases.map(({ one }, at) => ({ value: String(at), label: one.name }))}
        onChange={(at) => {
          const chosen = cases[Number(at)];
          if (at !== '' && chosen) onStart(chosen);
        }}
      />
      {check.editions.length > 1 && (
        <Select
          label={t('edition')}
          emptyLabel={t('editionAsUsual')}
          options={check.editions.map((each) => ({ value: each.id, label: say(each.title, locale) }))}
          value={shared.edition ?? ''}
          onChange={(edition) => onChange({ ...shared, edition: edition === '' ? undefined : edition })}
        />
      )}
      <CheckForm
        check={check}
        inputs={shared.inputs}
        onChange={(inputs) => onChange({ ...shared, inputs })}
        context={shared.context}
        edition={shared.edition}
      />
      <ContextForm context={shared.context} onChange={(context) => onChange({ ...shared, context })} />
      {outcome && outcome.verdict !== 'undetermined' && (
        <Working outcome={outcome} evidence={evidence} edition={judgedUnder ? say(judgedUnder.title, locale) : ''} />
      )}
      <ShareLink link={link} />
      <Button look="quiet" onClick={clear}>
        {t('clearForm')}
      </Button>
    </div>
  );
}

/** Says which words of the address could not be used; what could is in the form. */
function LinkTroubles({ troubles }: { troubles: readonly string[] }) {
  const t = useT(checksWords);
  if (troubles.length === 0) return null;
  return (
    <div className="fail" role="alert">
      <p className="fail-title">{t('linkTrouble')}</p>
      <ul className="fail-list">
        {troubles.map((trouble) => (
          <li key={trouble}>{trouble}</li>
        ))}
      </ul>
      <p>{t('linkRest')}</p>
    </div>
  );
}
