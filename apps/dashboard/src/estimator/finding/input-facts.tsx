import type { Field, Fields } from '@underlath/rules/kernel';
import type { ReactNode } from 'react';
import { useCheck } from '../../shared/measure/use-check.ts';
import { type Fact, Facts } from '../../shared/ui/facts.tsx';
import { LoadingRows } from '../../shared/ui/states.tsx';
import { nameWords, quantityWords } from '../desk/check-values.tsx';

type Inputs = Readonly<Record<string, unknown>>;

/** The measurements as they were typed, under the labels of the form that took them. */
export function InputFacts({ checkId, inputs }: { checkId: string; inputs: Inputs }) {
  const { check, state } = useCheck(checkId);
  if (state === 'loading') return <LoadingRows rows={2} />;
  const facts = check ? factsOf(check.inputs, inputs, '') : plainFacts(inputs);
  if (facts.length === 0) return <p className="soft">Nothing was measured.</p>;
  return <Facts facts={facts} />;
}

function factsOf(fields: Fields, inputs: Inputs, before: string): Fact[] {
  return Object.entries(fields).flatMap(([name, field]): Fact[] => {
    const value = inputs[name];
    if (value === undefined || value === null) return [];
    const label = before + field.label.en;
    if (field.kind === 'group') return factsOf(field.fields, value as Inputs, `${label}: `);
    if (field.kind === 'list') {
      return (value as Inputs[]).flatMap((item, at) => factsOf(field.item, item, `${label} ${at + 1}: `));
    }
    return [{ name: label, value: answerWords(field, value) }];
  });
}

function answerWords(field: Field, value: unknown): ReactNode {
  if (field.kind === 'choice') return field.options.find((option) => option.value === value)?.label.en ?? String(value);
  if (field.kind === 'length' || field.kind === 'number') return quantityWords(value as number, field.unit);
  return quantityWords(value as number | string | boolean, '');
}

/** A check this version no longer knows: its inputs are shown as they were stored. */
const plainFacts = (inputs: Inputs): Fact[] =>
  Object.entries(inputs).map(([name, value]) => ({ name: nameWords(name), value: JSON.stringify(value) }));
