import type { ClientLetter } from '@underlath/contract';
import { useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { ContactLines } from '../contact-lines.tsx';
import { MakeSafe } from '../make-safe.tsx';
import { type Block, openBlockWords } from '../problem-words.ts';
import { Section } from '../section.tsx';
import type { LetterStep } from '../use-step.ts';
import { NotInPrice, OtherWays } from './beside-price.tsx';
import { Choose } from './choose.tsx';
import { ContractChange } from './contract-change.tsx';
import { Decided } from './decided.tsx';
import { Findings } from './findings.tsx';
import { FinePrint } from './fine-print.tsx';
import { KeepCopy } from './keep-copy.tsx';
import { Letterhead, Subject } from './letter-head.tsx';
import { type Chosen, groupByPlace } from './letter-text.ts';
import { PlaceFigure } from './place-figure.tsx';
import { Price } from './price.tsx';
import { Questions } from './questions.tsx';
import { Glossary, Reasons, Repairs } from './reasons.tsx';
import { TotalBar } from './total-bar.tsx';

type LetterScreenProps = {
  letter: ClientLetter;
  chosen: Chosen;
  leftOut: readonly string[];
  onLeaveOut: (leftOut: readonly string[]) => void;
  /** Goes on to ask, with a question begun. */
  onAskFor: (question: string) => void;
  /** The link died while the letter was open: it can be read on, not answered. */
  block: Block | null;
  go: (step: LetterStep) => void;
  onClosed: () => void;
  /** In the office, before it is sent: to be read, neither answered nor kept. */
  preview?: boolean;
};

/** The letter: evidence before reasons, reasons before the repair, the repair before the price. */
export function LetterScreen({ onAskFor, ...props }: LetterScreenProps) {
  const { letter, chosen, leftOut, onLeaveOut, block, go, onClosed, preview = false } = props;
  const { document } = letter;
  const answerable = letter.state === 'open' && block === null && !preview;
  return (
    <>
      <article className="letter-body">
        <Letterhead company={document.company} />
        {block && <LinkDied block={block} />}
        <MakeSafe document={document} />
        <Decided letter={letter} chosen={chosen} />
        <Subject letter={letter} />
        {groupByPlace(document.items).map((place) => (
          <PlaceFigure key={place.place.locationId} {...place} />
        ))}
        <Findings document={document} />
        <Reasons document={document} />
        <Repairs document={document} />
        <Glossary document={document} />
        {answerable && <Choose letter={letter} chosen={chosen} leftOut={leftOut} onChange={onLeaveOut} />}
        <Price chosen={chosen} />
        <NotInPrice document={chosen.letter.document} />
        {/* What another way changes is known for the whole letter only. */}
        {!chosen.part && <OtherWays document={document} onAskFor={answerable ? onAskFor : undefined} />}
        <ContractChange chosen={chosen} />
        <Section document={chosen.letter.document} id="not-known" />
        <Questions letter={letter} />
        <ContactLines company={document.company} />
        {!preview && <KeepCopy onClosed={onClosed} />}
        <FinePrint document={document} />
      </article>
      {letter.state === 'open' && <TotalBar letter={chosen.letter} go={answerable ? go : undefined} />}
    </>
  );
}

/** Told over the letter, which stays to be read. */
function LinkDied({ block }: { block: Block }) {
  const t = useT(letterWords);
  const [title, ...body] = openBlockWords[block];
  return (
    <div className="notice" role="alert" tabIndex={-1} data-told>
      <p>
        <b>{t(title)}</b>
      </p>
      {body.map((key) => (
        <p key={key}>{t(key)}</p>
      ))}
      <p>{t('stillReading')}</p>
    </div>
  );
}
