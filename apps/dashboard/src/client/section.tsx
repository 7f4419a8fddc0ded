import { type ChangeOrderDocument, type LetterLine, type LetterSection, sectionOf } from '@underlath/contract';
import { Inline } from './words.tsx';

type SectionProps = { document: ChangeOrderDocument; id: LetterSection['id'] };

/** A section of the letter as it was frozen; nothing where the letter has none. */
export function Section({ document, id }: SectionProps) {
  const section = sectionOf(document, id);
  if (!section || section.lines.length === 0) return null;
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>
        <Inline text={section.title} />
      </h2>
      <Lines lines={section.lines} />
    </section>
  );
}

/** Sentences of a section one under the other. */
export function Lines({ lines }: { lines: readonly LetterLine[] }) {
  return (
    <ul className="plain-list">
      {lines.map((line) => (
        <li key={line.words.en}>
          {line.term && (
            <>
              <Inline text={line.term} />
              {': '}
            </>
          )}
          <Inline text={line.words} />
        </li>
      ))}
    </ul>
  );
}
