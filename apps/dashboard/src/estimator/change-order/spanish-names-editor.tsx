import { Link } from '@tanstack/react-router';
import type { ChangeOrder, MissingSpanish } from '@underlath/contract';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { Part } from '../desk/page.tsx';
import { type OrderDraft, type SpanishKind, withSpanishName } from './draft.ts';
import type { OrderDraftState } from './use-order-draft.ts';

const kindWords: Record<SpanishKind, string> = { titles: 'Finding', places: 'Place', captions: 'Photo' };

const isTypedHere = (kind: MissingSpanish['kind']): kind is SpanishKind => kind in kindWords;

type Name = { kind: SpanishKind; id: string; english: string; suggested: string | null; spanish: string };

/** Names typed in English on site, and their Spanish for a client who reads it. */
export function SpanishNamesEditor({ order, draft, change }: SpanishProps) {
  const names = namesOf(order, draft);
  const elsewhere = order.missingSpanish.filter(({ kind }) => kind === 'payments' || kind === 'lines');
  if (names.length + elsewhere.length === 0 || order.clientLocale !== 'es') return null;
  return (
    <Part
      title="Names in Spanish"
      lead="The client reads Spanish. What stays empty is asked for before it is sent, or goes out marked as English."
    >
      {names.map(({ kind, id, english, suggested, spanish }) => (
        <div key={`${kind} ${id}`} className="spanish-name">
          <TextInput
            label={`${kindWords[kind]}: ${english}`}
            lang="es"
            maxLength={400}
            value={spanish}
            onChange={(words) => change((old) => withSpanishName(old, kind, id, words))}
          />
          {suggested && spanish === '' && (
            <Button look="quiet" onClick={() => change((old) => withSpanishName(old, kind, id, suggested))}>
              Take the check’s own words: <span lang="es">{suggested}</span>
            </Button>
          )}
        </div>
      ))}
      {elsewhere.map(({ kind, id, english }) => (
        <p key={`${kind} ${id} ${english}`}>
          “{english}” has no Spanish.{' '}
          {kind === 'payments' ? (
            <Link to="/projects/$projectId/contract" params={{ projectId: order.projectId }}>
              Type it in the terms of the contract
            </Link>
          ) : (
            <Link
              to="/projects/$projectId/findings/$findingId/price"
              params={{ projectId: order.projectId, findingId: id }}
            >
              Type it beside the line
            </Link>
          )}
        </p>
      ))}
    </Part>
  );
}

type SpanishProps = { order: ChangeOrder; draft: OrderDraft; change: OrderDraftState['change'] };

/** Those without Spanish, and those whose Spanish was typed here. */
function namesOf({ draft: { items }, missingSpanish, spanish }: ChangeOrder, draft: OrderDraft): Name[] {
  const englishOf = new Map<string, string>([
    ...items.map(({ findingId, title }) => [findingId, title] as const),
    ...items.map(({ place }) => [place.locationId, place.name] as const),
    ...items.flatMap(({ photos }) => photos.map(({ id, caption }) => [id, caption] as const)),
  ]);
  const typed = (Object.keys(kindWords) as SpanishKind[]).flatMap((kind) =>
    Object.keys(spanish[kind]).flatMap((id) => {
      const english = englishOf.get(id);
      return english === undefined ? [] : [{ kind, id, english, suggested: null }];
    }),
  );
  const missing = missingSpanish.flatMap((name) => (isTypedHere(name.kind) ? [{ ...name, kind: name.kind }] : []));
  return [...missing, ...typed].map((name) => ({
    ...name,
    spanish: draft.spanish?.[name.kind][name.id] ?? spanish[name.kind][name.id] ?? '',
  }));
}
