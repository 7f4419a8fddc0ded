import { expect, test } from 'vitest';
import { toHtml } from './mail-html.ts';

const htmlOf = (text: string, locale = 'en') => toHtml({ subject: 'Wren & <Wren>', text, locale });

test('paragraphs stay paragraphs, lines stay lines, and the language is said', () => {
  const html = htmlOf('Hola Ines:\n\nUno\nDos\n', 'es');
  expect(html).toContain('<html lang="es-US">');
  expect(html).toContain('<p>Hola Ines:</p>\n<p>Uno<br>\nDos</p>');
});

test('what somebody typed is words, never markup', () => {
  const html = htmlOf('<b>"5" & more</b>');
  expect(html).toContain('<p>&lt;b&gt;&quot;5&quot; &amp; more&lt;/b&gt;</p>');
  expect(html).toContain('<title>Wren &amp; &lt;Wren&gt;</title>');
});

test('an address alone on its line can be pressed, one inside a sentence cannot', () => {
  const html = htmlOf('Read it here:\n\nhttps://a.example/c#secret\n\nI saw https://b.example yesterday');
  expect(html).toContain('<a href="https://a.example/c#secret">https://a.example/c#secret</a>');
  expect(html).not.toContain('href="https://b.example');
});
