import { encode } from 'uqr';

/** Dark on light in every theme, with the quiet zone that ISO/IEC 18004 asks for (four modules; from memory). */
export function QrCode({ text, label }: { text: string; label: string }) {
  const { data, size } = encode(text, { border: 4 });
  const path = data.flatMap((row, y) => row.map((isDark, x) => (isDark ? `M${x} ${y}h1v1h-1z` : ''))).join('');
  return (
    <svg className="qr" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label} shapeRendering="crispEdges">
      <rect width={size} height={size} fill="#ffffff" />
      <path d={path} fill="#000000" />
    </svg>
  );
}
