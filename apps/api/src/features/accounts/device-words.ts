const systems: readonly (readonly [RegExp, string])[] = [
  [/iPhone/, 'iPhone'],
  [/iPad/, 'iPad'],
  [/Android.*Mobile/, 'Android phone'],
  [/Android/, 'Android tablet'],
  [/CrOS/, 'Chromebook'],
  [/Macintosh/, 'Mac'],
  [/Windows/, 'Windows computer'],
  [/Linux/, 'Linux computer'],
];
/** Each names those before it too, so the order decides. */
const browsers: readonly (readonly [RegExp, string])[] = [
  [/Edg(e|A|iOS)?\//, 'Edge'],
  [/OPR\//, 'Opera'],
  [/SamsungBrowser\//, 'Samsung Internet'],
  [/(Firefox|FxiOS)\//, 'Firefox'],
  [/(Chrome|CriOS)\//, 'Chrome'],
  [/Safari\//, 'Safari'],
];

/** What a device is, as far as its browser says: "iPhone, Safari". A browser may say anything. */
export function deviceWords(userAgent: string | null): string {
  const find = (list: typeof systems) => list.find(([sign]) => sign.test(userAgent ?? ''))?.[1];
  const words = [find(systems), find(browsers)].filter(Boolean).join(', ');
  return words || 'Unknown device';
}
