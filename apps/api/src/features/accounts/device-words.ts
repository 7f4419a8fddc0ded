import { type Text, text } from '@underlath/rules';

const systems: readonly (readonly [RegExp, Text])[] = [
  [/iPhone/, text('iPhone', 'iPhone')],
  [/iPad/, text('iPad', 'iPad')],
  [/Android.*Mobile/, text('Android phone', 'Teléfono Android')],
  [/Android/, text('Android tablet', 'Tableta Android')],
  [/CrOS/, text('Chromebook', 'Chromebook')],
  [/Macintosh/, text('Mac', 'Mac')],
  [/Windows/, text('Windows computer', 'Computadora con Windows')],
  [/Linux/, text('Linux computer', 'Computadora con Linux')],
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
export function deviceWords(userAgent: string | null): Text {
  const find = <Words>(list: readonly (readonly [RegExp, Words])[]) =>
    list.find(([sign]) => sign.test(userAgent ?? ''))?.[1];
  const [system, browser] = [find(systems), find(browsers)];
  if (!system && !browser) return text('Unknown device', 'Aparato desconocido');
  const join = (name: string | undefined) => [name, browser].filter(Boolean).join(', ');
  return text(join(system?.en), join(system?.es));
}
