import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A thermometer and a humidity dial beside a piece of lumber',
    'Un termómetro y un medidor de humedad junto a una pieza de madera',
  ),
  shapes: [
    { box: [14, 84, 152, 26], look: 'wood' },
    { box: [40, 10, 10, 52], look: 'opening' },
    { box: [43, 30, 4, 36], look: 'ink' },
    { circle: [45, 66, 8], look: 'ink' },
    { line: [52, 18, 58, 18], kind: 'thin' },
    { line: [52, 28, 58, 28], kind: 'thin' },
    { line: [52, 38, 58, 38], kind: 'thin' },
    { line: [52, 48, 58, 48], kind: 'thin' },
    { circle: [118, 42, 31], look: 'opening' },
    { ring: [118, 42, 31], kind: 'thick' },
    { path: 'M96 56 Q92 20 118 20 Q144 20 140 56', kind: 'thin' },
    { line: [118, 42, 132, 27], kind: 'thick' },
    { circle: [118, 42, 3], look: 'ink' },
    { word: text('%', '%'), at: [118, 64], anchor: 'middle' },
    { word: text('°F', '°F'), at: [20, 22] },
    { point: [16, 42, 43, 34], of: 'temperatureF' },
    { point: [168, 16, 131, 29], of: 'humidityPct' },
  ],
};
