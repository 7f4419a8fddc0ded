import { expect, test } from 'vitest';
import { deviceWords } from './device-words.ts';

test.each([
  [
    'Mozilla/5.0 (iPhone; CPU iPhone OS 18_1 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.1 Mobile/15E148 Safari/604.1',
    'iPhone, Safari',
  ],
  [
    'Mozilla/5.0 (Linux; Android 15; Pixel) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Mobile Safari/537.36',
    'Android phone, Chrome',
  ],
  [
    'Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Safari/537.36 Edg/140.0.0.0',
    'Windows computer, Edge',
  ],
  ['Mozilla/5.0 (Macintosh; Intel Mac OS X 10.15; rv:143.0) Gecko/20100101 Firefox/143.0', 'Mac, Firefox'],
  ['curl/8', 'Unknown device'],
  [null, 'Unknown device'],
])('%s is told as %s', (userAgent, words) => expect(deviceWords(userAgent).en).toBe(words));

test('a device is told in Spanish too', () => {
  expect(deviceWords('Mozilla/5.0 (Linux; Android 15) Chrome/140.0.0.0 Mobile').es).toBe('Teléfono Android, Chrome');
});
