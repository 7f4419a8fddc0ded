// In a thread of its own: reading takes whole seconds, and the server under test would call itself too busy meanwhile.
import { parentPort, workerData } from 'node:worker_threads';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

const document = await getDocument({ data: new Uint8Array(workerData), verbosity: 0, useSystemFonts: false }).promise;
const { info } = await document.getMetadata();
const marks = await document.getMarkInfo();
let text = '';
let imageCount = 0;
for (let number = 1; number <= document.numPages; number += 1) {
  const page = await document.getPage(number);
  const { items } = await page.getTextContent();
  const [left, bottom, right, top] = page.view;
  // What is written beyond the paper nobody can read.
  const isOnPaper = ({ transform: [, , , , x, y] }) => x >= left && x <= right && y >= bottom && y <= top;
  text += items.map((item) => (isOnPaper(item) ? item.str : '') + (item.hasEOL ? ' ' : '')).join('');
  const { fnArray } = await page.getOperatorList();
  imageCount += fnArray.filter((operator) => operator === OPS.paintImageXObject).length;
}
parentPort.postMessage({
  text: text.replaceAll(/\s+/g, ' '),
  title: info.Title ?? '',
  language: info.Language ?? '',
  isTagged: marks?.Marked === true,
  pageCount: document.numPages,
  imageCount,
});
await document.destroy();
