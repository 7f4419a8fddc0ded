import { type Field, type Fields, say } from '@underlath/rules/kernel';
import type { ReactNode } from 'react';
import { signWordsOf } from '../../shared/drawing/tape-picture.tsx';
import { formatNumber } from '../../shared/i18n/format.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { Length } from '../../shared/measure/length.tsx';
import { useCheck } from '../../shared/measure/use-check.ts';
import { type Fact, Facts } from '../../shared/ui/facts.tsx';
import { LoadingRows } from '../../shared/ui/states.tsx';

type GivenInputsProps = { checkId: string; inputs: Readonly<Record<string, unknown>> };

/** What was measured, under the names the form asked it by. A check that no longer exists shows the raw names. */
export function GivenInputs({ checkId, inputs }: GivenInputsProps) {
  const { locale, tag } = useLocale();
  const c = useT(commonWords);
  const words = { yes: c('yes'), no: c('no') };
  const { check, state } = useCheck(checkId);

  function shown(field: Field | undefined, value: unknown): ReactNode {
    if (field?.kind === 'length' && typeof value === 'number') {
      const signs = signWordsOf(field.picture, locale);
      const inches = field.unit === 'ft' ? value * 12 : value;
      if (!signs || inches === 0) return <Length inches={inches} />;
      return (
        <>
          <Length inches={Math.abs(inches)} /> {inches < 0 ? signs.negative : signs.positive}
        </>
      );
    }
    if (field?.kind === 'choice') {
      const option = field.options.find((candidate) => candidate.value === value);
      if (option) return say(option.label, locale);
    }
    if (typeof value === 'boolean') return value ? words.yes : words.no;
    // A year is no quantity: it takes no thousands mark.
    if (typeof value === 'number')
      return field?.kind === 'count' && value > 999 ? String(value) : formatNumber(value, tag, 3);
    return String(value);
  }
  function factsOf(fields: Fields, given: Readonly<Record<string, unknown>>, before: string): Fact[] {
    // In the order the form asked; the database keeps no order of its own.
    const names = [...new Set([...Object.keys(fields), ...Object.keys(given)])].filter((name) => name in given);
    return names.flatMap((name) => {
      const value = given[name];
      const field = fields[name];
      const label = before + (field ? say(field.label, locale) : name);
      if (value === null || value === undefined) return [];
      if (field?.kind === 'group') return factsOf(field.fields, value as Record<string, unknown>, '');
      if (field?.kind === 'list' && Array.isArray(value)) {
        return value.flatMap((item: Record<string, unknown>, at) => {
          const { name: itemName, ...rest } = item;
          return factsOf(field.item, rest, `${typeof itemName === 'string' ? itemName : at + 1}: `);
        });
      }
      return [{ name: label, value: shown(field, value) }];
    });
  }
  if (state === 'loading') return <LoadingRows rows={2} />;
  return <Facts facts={factsOf(check?.inputs ?? {}, inputs, '')} />;
}
