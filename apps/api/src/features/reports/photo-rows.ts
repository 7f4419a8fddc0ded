import { createHash } from 'node:crypto';
import { captionOf, type DocumentItem } from '@underlath/contract';
import { type Locale, PHOTO_WORDS } from '@underlath/rules';
import sharp from 'sharp';
import { inLocale } from './report-sections.ts';
import type { ReportWords } from './report-words.ts';
import { rule, runText, type Sheet, textWidthPt } from './sheet.ts';

type Photo = DocumentItem['photos'][number];
/** The picture shown to clients (1600 px, no metadata), or null when the store does not have it. */
export type LoadPhoto = (photo: Photo) => Promise<Buffer | null>;

const perRow = 2;
const gapPt = 12;
const cellWidthPt = (textWidthPt - gapPt) / perRow;
const pictureHeightPt = 178;
const captionPt = 26;
const headingPt = 24;
/** About 200 dots an inch at the printed width. */
const printWidthPx = 680;

interface Picture {
  readonly photo: Photo;
  readonly jpeg: Buffer | null;
  readonly trouble: string | null;
}

/** Two photos a row; only one row's pictures are in memory. */
export async function* drawPhotos(
  sheet: Sheet,
  words: ReportWords,
  photos: readonly Photo[],
  loadPhoto: LoadPhoto,
  locale: Locale,
): AsyncGenerator<void> {
  if (photos.length === 0) return;
  sheet.keep(pictureHeightPt + captionPt + headingPt);
  sheet.subheading(words.photos);
  for (let at = 0; at < photos.length; at += perRow) {
    const row: Picture[] = [];
    for (const photo of photos.slice(at, at + perRow)) row.push(await prepare(photo, words, loadPhoto));
    drawRow(sheet, row, locale);
    yield;
  }
}

/** Re-encoded from pixels, so that nothing but the picture reaches the page; compared with its hash first. */
async function prepare(photo: Photo, words: ReportWords, loadPhoto: LoadPhoto): Promise<Picture> {
  const stored = await loadPhoto(photo);
  if (!stored) return { photo, jpeg: null, trouble: words.photoAway };
  const sha256 = createHash('sha256').update(stored).digest('hex');
  if (sha256 !== photo.viewSha256) return { photo, jpeg: null, trouble: words.photoChanged };
  const jpeg = await sharp(stored)
    .resize({ width: printWidthPx, height: printWidthPx, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 78 })
    .toBuffer();
  return { photo, jpeg, trouble: null };
}

function drawRow(sheet: Sheet, row: readonly Picture[], locale: Locale): void {
  sheet.keep(pictureHeightPt + captionPt);
  const topPt = sheet.doc.y;
  row.forEach(({ photo, jpeg, trouble }, at) => {
    const leftPt = sheet.leftPt + at * (cellWidthPt + gapPt);
    const said = inLocale(captionOf(photo), locale);
    const lang = typeof said === 'object' ? { lang: said.lang } : {};
    const own = runText(said);
    const caption = [own, trouble, `SHA-256 ${photo.sha256.slice(0, 16)}…`].filter(Boolean).join(' · ');
    const { doc } = sheet;
    const bbox: [number, number, number, number] = [leftPt, topPt, leftPt + cellWidthPt, topPt + pictureHeightPt];
    const draw = () => {
      if (jpeg)
        doc.image(jpeg, leftPt, topPt, { fit: [cellWidthPt, pictureHeightPt], align: 'center', valign: 'center' });
      doc.rect(leftPt, topPt, cellWidthPt, pictureHeightPt).lineWidth(0.4).stroke(rule);
    };
    doc.addStructure(
      sheet.element('Figure', draw, { alt: own || trouble || PHOTO_WORDS[photo.stage][locale], bbox, ...lang }),
    );
    const words = sheet.element(
      'Caption',
      () => {
        sheet.style({ sizePt: 8 });
        doc.text(caption, leftPt, topPt + pictureHeightPt + 3, {
          width: cellWidthPt,
          height: captionPt - 4,
          ellipsis: true,
        });
      },
      lang,
    );
    doc.addStructure(words);
  });
  sheet.doc.x = sheet.leftPt;
  sheet.doc.y = topPt + pictureHeightPt + captionPt;
}
