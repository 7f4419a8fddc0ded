import { type Company, routes } from '@underlath/contract';
import type { FormEvent } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Facts } from '../../shared/ui/facts.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { Part } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { useDraft } from '../desk/use-draft.ts';

const fields = [
  { name: 'name', label: 'Name', optional: false },
  { name: 'licenseNumber', label: 'License number', optional: true },
  { name: 'phone', label: 'Phone', optional: true },
  { name: 'email', label: 'E-mail', optional: true },
  { name: 'address', label: 'Address', optional: true },
  { name: 'state', label: 'State, two letters', optional: true },
] as const;

/** The company as it stands on every letter. */
export function CompanyForm({ owner }: { owner: boolean }) {
  const company = useRoute(routes.getCompany, {});
  return (
    <Part
      title="The company"
      lead="This stands on every letter to a client. What was sent keeps what it was sent with."
    >
      <Reading query={company} doing="Reading the company" rows={4}>
        {(data) => (owner ? <EditCompany company={data} /> : <CompanyFacts company={data} />)}
      </Reading>
    </Part>
  );
}

function CompanyFacts({ company }: { company: Company }) {
  return <Facts facts={fields.map(({ name, label }) => ({ name: label, value: company[name] ?? 'not set' }))} />;
}

function EditCompany({ company }: { company: Company }) {
  const announce = useAnnounce();
  const { draft, set } = useDraft(() => ({
    name: company.name,
    licenseNumber: company.licenseNumber ?? '',
    phone: company.phone ?? '',
    email: company.email ?? '',
    address: company.address ?? '',
    state: company.state ?? '',
  }));
  const change = useChange(routes.changeCompany, {
    invalidates: [routes.getCompany, routes.whoAmI],
    onDone: () => announce('Saved'),
  });
  const problem = change.error ? problemOf(change.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    const orNull = (typed: string) => typed.trim() || null;
    change.mutate({
      body: {
        name: draft.name,
        licenseNumber: orNull(draft.licenseNumber),
        phone: orNull(draft.phone),
        email: orNull(draft.email),
        address: orNull(draft.address),
        state: orNull(draft.state.toUpperCase()),
      },
      ifMatch: company.version,
    });
  }
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <div className="form-pair">
        {fields.map(({ name, label, optional }) => (
          <TextInput
            key={name}
            label={label}
            optional={optional}
            autoComplete="off"
            value={draft[name]}
            onChange={set(name)}
            error={errorAt(problem, `/${name}`)}
          />
        ))}
      </div>
      <FormFail problem={problem} doing="Saving the company" />
      <p>
        <Button type="submit" busy={change.isPending}>
          Save the company
        </Button>
      </p>
    </form>
  );
}
