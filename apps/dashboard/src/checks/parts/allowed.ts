import type { Field } from '@underlath/rules';
import { formatLength, say } from '@underlath/rules/kernel';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { checksWords } from '../../shared/i18n/messages/checks.ts';
import { quantityText } from '../../shared/measure/quantity.ts';
import { perUnit } from '../../shared/measure/use-length-check.ts';

/** What an input takes, in words: `1/2" to 1"`, `a whole number`, the choices by name. */
export function useAllowed(): (field: Field) => string {
  const t = useT(checksWords);
  const { locale } = useLocale();
  return (field) => {
    switch (field.kind) {
      case 'length': {
        const show = (value: number) => formatLength(value * perUnit[field.unit]);
        return field.oneOf
          ? field.oneOf.map(show).join(', ')
          : t('fromTo', { from: show(field.min), to: show(field.max) });
      }
      case 'number': {
        const unit = field.unit === 'year' ? 'count' : field.unit;
        const from = field.unit === 'year' ? String(field.min) : quantityText({ value: field.min, unit }, locale);
        const to = field.unit === 'year' ? String(field.max) : quantityText({ value: field.max, unit }, locale);
        return t('fromTo', { from, to });
      }
      case 'count':
        return t('wholeNumber');
      case 'choice':
        return field.options.map(({ label }) => say(label, locale)).join(' · ');
      case 'flag':
        return t('yesNo');
      case 'name':
        return t('words');
      case 'list':
        return t('eachOf');
      case 'group':
        return '';
    }
  };
}
