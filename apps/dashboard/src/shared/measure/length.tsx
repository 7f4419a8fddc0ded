import { formatLength, lengthParts } from '@underlath/rules/kernel';
import './measure.css';

type LengthProps = { inches: number; style?: 'feet-inches' | 'inches'; denominator?: 8 | 16 | 32 };

/** A fraction set as a fraction. */
export function Fraction({ over, under }: { over: number; under: number }) {
  return (
    <span className="frac">
      <sup>{over}</sup>⁄<sub>{under}</sub>
    </span>
  );
}

/** A length in feet, inches and a real fraction; screen readers get the plain `4'-6 1/2"`. */
export function Length({ inches, style = 'feet-inches', denominator = 16 }: LengthProps) {
  const parts = lengthParts(inches, { style, denominator });
  const showWhole = parts.whole > 0 || parts.numerator === 0 || parts.feet > 0;
  return (
    <span className="length">
      <span className="hidden-text">{formatLength(inches, { style, denominator })}</span>
      <span aria-hidden="true">
        {parts.negative && '−'}
        {parts.feet > 0 && `${parts.feet}'-`}
        {showWhole && parts.whole}
        {parts.numerator > 0 && (
          <>
            {showWhole && '\u2009'}
            <Fraction over={parts.numerator} under={parts.denominator} />
          </>
        )}
        {'"'}
      </span>
    </span>
  );
}
