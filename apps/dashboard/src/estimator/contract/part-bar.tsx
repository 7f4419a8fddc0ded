import { Money } from '../../shared/ui/money.tsx';

export type BarPart = { name: string; cents: number; look: 'full' | 'half' | 'dashed' | 'empty' };

/** A sum as a bar of its parts, each named with its money under it; the list says all that the bar shows. */
export function PartBar({ parts }: { parts: readonly BarPart[] }) {
  const shown = parts.filter(({ cents }) => cents > 0);
  const whole = shown.reduce((sum, { cents }) => sum + cents, 0);
  let from = 0;
  const placed = shown.map((part) => {
    const at = from;
    from += (part.cents / Math.max(1, whole)) * 100;
    return { ...part, at, width: from - at };
  });
  return (
    <>
      <svg className="part-bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
        {placed.map(({ name, look, at, width }) => (
          <rect key={name} className={`bar-${look}`} x={at} y={0.5} width={width} height={9} />
        ))}
      </svg>
      <ul className="part-names">
        {parts.map(({ name, cents, look }) => (
          <li key={name}>
            <svg viewBox="0 0 14 14" aria-hidden="true">
              <rect className={`bar-${look}`} x={1} y={1} width={12} height={12} />
            </svg>
            <span>{name}</span> <Money cents={cents} />
          </li>
        ))}
      </ul>
    </>
  );
}
