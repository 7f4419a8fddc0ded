import { type Locale, SEVERITY_CONSEQUENCE, type Text, text } from '../../kernel/index.ts';
import type { ChangeOrderDocument, DocumentItem, LetterLine, LetterSection } from './change-order-document.ts';
import { lineWords, placeOf, sectionOf, titleOf } from './document-words.ts';
import { type TradeWord, tradeWords } from './trade-words.data.ts';

/** A letter that is not sent yet has all that its sections are made from. */
type Source = Pick<ChangeOrderDocument, 'wording' | 'items' | 'price' | 'parts' | 'cautions' | 'company' | 'contract'>;

/**
 * Whatever a letter promises, warns of, leaves open, asks for or explains beside its findings and figures. Made once, when
 * it is sent, and frozen in the document: page, PDF and mail show these words and add none of their own.
 */
export const letterSections = (document: Source): LetterSection[] =>
  [
    makeSafe(document),
    aboutLetter,
    aboutPrice(document),
    aboutParts(document),
    notKnown(document),
    cautions(document),
    words(document),
  ].filter(({ lines }) => lines.length > 0);

/** The make-safe words of a letter in one language, the title first; none where nothing has to be made safe. */
export function makeSafeLines(document: Pick<ChangeOrderDocument, 'sections'>, locale: Locale): string[] {
  const section = sectionOf(document, 'make-safe');
  return section ? [section.title[locale], ...section.lines.map((line) => lineWords(line, locale))] : [];
}

function makeSafe({ items, company }: Source): LetterSection {
  const urgent = items.filter(({ severity }) => severity === 'make-safe');
  const places = uniqueTexts(urgent.map(keepOut));
  const orders = uniqueTexts(urgent.flatMap(({ cautions: [first] }) => (first ? [first] : [])));
  const call = company.phone
    ? text(
        `If anyone works, sleeps or sits there, call ${company.name} today: ${company.phone}.`,
        `Si alguien trabaja, duerme o se sienta ahí, llame hoy a ${company.name}: ${company.phone}.`,
      )
    : text(
        'If anyone works, sleeps or sits there, call your contractor today.',
        'Si alguien trabaja, duerme o se sienta ahí, llame hoy a su contratista.',
      );
  const lines: LetterLine[] = [
    ...places.map((words) => ({ words, atSigning: true })),
    { words: call },
    {
      words: text(
        'Saying no to this change does not make the place safe. Keep out until it has been made safe.',
        'Rechazar este cambio no quita el peligro. No entre hasta que el lugar esté asegurado.',
      ),
      atDeclining: true,
    },
    ...orders.map((words) => ({ words, term: forCrew })),
  ];
  return {
    id: 'make-safe',
    title: text('Make safe now', 'Hay que asegurarlo ya'),
    lines: urgent.length > 0 ? lines : [],
  };
}

const forCrew = text('What the people working there must do', 'Lo que debe hacer quien trabaja ahí');

/** What carries is stood under, other places are entered. */
function keepOut({ number, place }: DocumentItem): Text {
  const { en, es } = placeOf(place);
  // Without a Spanish name the place is told by its finding, so that no English stands in a Spanish sentence.
  const name = es || `la del hallazgo ${number}`;
  return place.kind === 'beam-line'
    ? text(`Stay out from under this beam: ${en}.`, `No se ponga debajo de esta viga: ${name}.`)
    : text(`Keep out of this place: ${en}.`, `No entre en este lugar: ${es || `el del hallazgo ${number}`}.`);
}

const aboutLetter: LetterSection = {
  id: 'letter',
  title: text('What this letter is', 'Qué es esta carta'),
  lines: [
    {
      words: text(
        'This letter is a change order: a written change to your contract. Nothing is agreed until you answer.',
        'Esta carta es una orden de cambio: un cambio por escrito a su contrato. Nada queda acordado hasta que usted responda.',
      ),
    },
    {
      words: text(
        'If you do not answer, nothing is agreed and this work waits.',
        'Si no responde, nada queda acordado y este trabajo espera.',
      ),
    },
    {
      words: text(
        'The page, the PDF and the print have the same words, prices and photos.',
        'La página, el PDF y la copia impresa tienen las mismas palabras, precios y fotos.',
      ),
    },
    {
      words: text(
        'Until you answer, the PDF tells the contract as it was when this letter was sent. The page tells it as it is today.',
        'Hasta que usted responda, el PDF dice el contrato como estaba al enviarse esta carta. La página lo dice como está hoy.',
      ),
    },
  ],
};

function aboutPrice({ price, items }: Source): LetterSection {
  const hasAllowance = price.lines.some(({ kind }) => kind === 'allowance');
  const lines: LetterLine[] = [
    ...(price.placeholder ? [{ words: sampleRates, atSigning: true }] : []),
    ...(price.lines.some(({ taxCents }) => taxCents > 0) ? [{ words: withTax }] : []),
    ...(hasAllowance ? [{ words: allowances, atSigning: true }] : []),
    ...(items.some(({ alternates = [] }) => alternates.length > 0) ? [{ words: otherWays }] : []),
  ];
  return { id: 'price', title: text('About this price', 'Sobre este precio'), lines };
}

const sampleRates = text(
  'These prices use sample rates. Ask your contractor to confirm them before you sign.',
  'Estos precios usan tarifas de muestra. Pida a su contratista que los confirme antes de firmar.',
);
const withTax = text(
  'The price includes sales tax on materials.',
  'El precio incluye el impuesto sobre los materiales.',
);
const allowances = text(
  'An allowance is money set aside for something not chosen yet. When it is spent, the price goes up or down to what it cost.',
  'Una partida por definir es dinero reservado para algo que aún no se elige. Cuando se gasta, el precio sube o baja a lo que costó.',
);
const otherWays = text(
  'None of the other ways is in the price. If you want one, ask us. You get a new letter first.',
  'Ninguna de las otras maneras está en el precio. Si quiere una, pregúntenos. Usted recibe antes una carta nueva.',
);

const aboutParts = ({ parts }: Source): LetterSection => ({
  id: 'parts',
  title: text('What you may leave out', 'Lo que puede dejar fuera'),
  lines: parts
    ? [
        {
          words: text(
            'You may leave out single findings. The price is worked out again, because shared work counts once.',
            'Puede dejar fuera algunos puntos. El precio se calcula otra vez, porque el trabajo compartido se cuenta una vez.',
          ),
        },
        {
          words: text(
            'What you leave out counts as declined. It is not agreed.',
            'Lo que deja fuera cuenta como rechazado. No queda acordado.',
          ),
        },
      ]
    : [],
});

function notKnown({ items, price }: Source): LetterSection {
  const lines: LetterLine[] = [
    ...uniqueTexts(price.gaps.map(({ title }) => title)).map(({ en, es }) => ({
      words: text(`No price yet: ${en}. It is not in the total.`, `Aún sin precio: ${es}. No está en el total.`),
      atSigning: true,
    })),
    ...items.filter(({ severity }) => severity === 'engineer').map(engineerDecides),
    {
      words: text(
        'We can only judge what is open now. There may be more behind closed walls.',
        'Solo podemos evaluar lo que está abierto ahora. Puede haber más detrás de paredes cerradas.',
      ),
    },
    {
      words: text(
        'If the work or the price changes, you get a new letter first.',
        'Si cambia el trabajo o el precio, usted recibe antes una carta nueva.',
      ),
    },
  ];
  return { id: 'not-known', title: text('What we do not know yet', 'Lo que aún no sabemos'), lines };
}

const engineerDecides = ({ findingId, number }: DocumentItem): LetterLine => ({
  words: text(
    `An engineer decides how to fix finding ${number}. The repair, its price and the days may change.`,
    `Un ingeniero decide cómo reparar el hallazgo ${number}. La reparación, su precio y los días pueden cambiar.`,
  ),
  atSigning: true,
  atDeclining: true,
  findingId,
});

/** Every caution of the letter and its findings once, without what the make-safe words say already. */
function cautions({ cautions: own, items }: Source): LetterSection {
  const loud = items.flatMap(({ severity, cautions: [first] }) =>
    severity === 'make-safe' && first ? [first.en] : [],
  );
  const quiet = uniqueTexts([...own, ...items.flatMap((item) => item.cautions)]).filter(({ en }) => !loud.includes(en));
  return {
    id: 'cautions',
    title: text('Please know', 'Tenga en cuenta'),
    lines: quiet.map((said) => ({ words: said })),
  };
}

/** Trade words that stand in this letter, each explained once, in the order in which they first come. */
const words = (document: Source): LetterSection => ({
  id: 'words',
  title: text('Words in this letter', 'Palabras de esta carta'),
  lines: tradeWordsIn(saidIn(document)).map(({ word: term, means }) => ({ term, words: means })),
});

/** All that the letter says, as one run of text in each language. */
function saidIn({ wording, items, price, cautions: own }: Source): Text {
  const texts: Text[] = [
    ...Object.values(wording),
    ...items.flatMap((item) => [titleOf(item), item.found, item.why, item.ifNot, ...item.repairs, ...item.cautions]),
    ...items.flatMap(({ severity, measured }) => [
      SEVERITY_CONSEQUENCE[severity],
      ...measured.map(({ label }) => label),
    ]),
    ...items.flatMap(({ exclusions = [], alternates = [] }) => [
      ...exclusions,
      ...alternates.flatMap(({ name, what }) => [name, ...what]),
    ]),
    ...price.lines.map((line) => line.title),
    ...own,
  ];
  return text(texts.map(({ en }) => en).join('\n'), texts.map(({ es }) => es).join('\n'));
}

/** A word that stands in either language is explained in both. */
export function tradeWordsIn(said: Text): TradeWord[] {
  const firstAt = ({ found }: TradeWord) => {
    const [en, es] = [said.en.search(found.en), said.es.search(found.es)];
    return en >= 0 ? en : es;
  };
  return tradeWords
    .map((entry) => ({ entry, at: firstAt(entry) }))
    .filter(({ at }) => at >= 0)
    .sort((a, b) => a.at - b.at)
    .map(({ entry }) => entry);
}

const squeezed = (said: string): string => said.replace(/\s+/g, ' ').trim().toLowerCase();

function uniqueTexts(texts: readonly Text[]): Text[] {
  return texts.filter((one, at) => texts.findIndex((other) => squeezed(other.en) === squeezed(one.en)) === at);
}
