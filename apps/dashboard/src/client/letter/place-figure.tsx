import { type DocumentItem, type Locale, type LocationKind, opening, placeOf, titleOf } from '@underlath/contract';
import { sized } from '@underlath/rules/places';
import type { DrawnPlace } from '../../shared/drawing/drawn-place.ts';
import { Elevation } from '../../shared/drawing/elevation.tsx';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Inline } from '../words.tsx';
import { numberList, type PlaceWithItems, wordsIn } from './letter-text.ts';

/** The place as it was frozen in the letter, in the form the drawing takes. */
function drawnPlace(place: DocumentItem['place'], locale: Locale): DrawnPlace {
  return {
    kind: place.kind as LocationKind,
    name: wordsIn(placeOf(place), locale).words,
    widthIn: place.widthIn,
    heightIn: place.heightIn,
    framingSpacingIn: place.framingSpacingIn,
    memberDepthIn: null,
    openings: place.openings.flatMap((each) => opening.safeParse(each).data ?? []),
  };
}

/** One wall, floor or beam to scale with its findings hatched and numbered; nothing when its size is not known. */
export function PlaceFigure({ place, items }: PlaceWithItems) {
  const t = useT(letterWords);
  const { locale, tag } = useLocale();
  const drawn = drawnPlace(place, locale);
  if (!sized(drawn) || items.every((item) => item.extent === null)) return null;
  const findings = items.map((item) => ({
    id: item.findingId,
    number: item.number,
    title: wordsIn(titleOf(item), locale).words,
    severity: item.severity,
    extent: item.extent,
  }));
  const missing = items.filter((item) => item.extent === null).map((item) => item.number);
  return (
    <div className="place-figure keep-together">
      <Elevation place={drawn} findings={findings} labels="numbers" maxHeightPx={400} />
      <p className="soft caption">
        <b>
          <Inline text={placeOf(place)} />.
        </b>{' '}
        {t('hatchHelp')}{' '}
        {missing.length > 0 && t('notDrawn', { count: missing.length, numbers: numberList(missing, tag) })}
      </p>
    </div>
  );
}
