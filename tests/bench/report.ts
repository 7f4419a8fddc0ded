import { createHash } from 'node:crypto';
import type { ChangeOrderDocument } from '@underlath/contract';
import PDFDocument from 'pdfkit';
import sharp from 'sharp';
import { writeReport } from '../../apps/api/src/features/reports/change-order-report.ts';
import { noiseJpeg } from './pictures.ts';
import { inTurns, type Row, rate } from './table.ts';

const photos = 40;
/** As the report prints a photo: 680 px at the most, two a row. */
const print = { widthPx: 680, quality: 78, perPage: 6 };

/** A change order with 40 photos as a PDF: against the same photos, made as small, through the PDF library alone. */
export async function report(): Promise<Row> {
  const views = await Promise.all(Array.from({ length: photos }, () => noiseJpeg(1600, 1200, 82)));
  const document = documentOf(views);
  const byId = new Map(document.items.flatMap((item) => item.photos).map(({ id }, at) => [id, views[at] ?? null]));
  const input = {
    ...{ document, sha256: 'f'.repeat(64), decision: null, questions: [], answerBy: document.expiresAt },
    ...{ locale: 'en' as const, timeZone: 'America/Los_Angeles' },
    loadPhoto: async ({ id }: { id: string }) => byId.get(id) ?? null,
  };
  const bytes = { ours: 0, floor: 0 };
  const result = await inTurns(
    5,
    () =>
      rate(1, async () => {
        bytes.ours = 0;
        for await (const chunk of writeReport(input)) bytes.ours += chunk.length;
      }),
    () =>
      rate(1, async () => {
        bytes.floor = await bare(views);
      }),
  );
  const megabytes = (count: number) => `${(count / 1e6).toFixed(1)} MB`;
  const note = `${megabytes(bytes.ours)} against ${megabytes(bytes.floor)}; both make each photo ${print.widthPx} px first`;
  return { work: 'change order as PDF, 40 photos', ...result, unit: 'PDFs/s', goal: 0.8, note };
}

async function bare(views: readonly Buffer[]): Promise<number> {
  const pdf = new PDFDocument({ size: 'LETTER', autoFirstPage: false });
  let size = 0;
  const done = new Promise((resolve) => pdf.on('end', resolve));
  pdf.on('data', (chunk: Buffer) => {
    size += chunk.length;
  });
  for (const [at, view] of views.entries()) {
    const small = { width: print.widthPx, height: print.widthPx, fit: 'inside' as const };
    const jpeg = await sharp(view).resize(small).jpeg({ quality: print.quality }).toBuffer();
    const place = at % print.perPage;
    if (place === 0) pdf.addPage();
    pdf.image(jpeg, 54 + (place % 2) * 258, 54 + Math.floor(place / 2) * 210, { fit: [246, 178] });
  }
  pdf.end();
  await done;
  return size;
}

function documentOf(views: readonly Buffer[]): ChangeOrderDocument {
  const words = (en: string) => ({ en, es: en });
  const item = {
    findingId: 'one',
    number: 1,
    title: 'Top plate cut for a vent',
    place: {
      ...{ locationId: 'wall', name: 'North wall', kind: 'wall', widthIn: 144, heightIn: 97.125 },
      ...{ framingSpacingIn: 16, openings: [] },
    },
    extent: { xIn: 40, yIn: 93, widthIn: 6, heightIn: 4 },
    severity: 'repair' as const,
    ...{ found: words('A plate is cut.'), why: words('It ties the wall.'), ifNot: words('The wall may part.') },
    ...{ repairs: [words('We tie it.')], cautions: [], sources: [], measured: [], rulesVersion: '1' },
    ...{ checkedBy: 'Bench', checkedAt: '2026-03-03T17:05:00Z', shareCents: 50_000 },
    photos: views.map((view, at) => {
      const viewSha256 = createHash('sha256').update(view).digest('hex');
      return { id: `photo-${at}`, sha256: viewSha256, viewSha256, caption: `Photo ${at + 1}`, stage: 'found' as const };
    }),
  };
  const price = {
    ...{ currency: 'USD' as const, costBookVersion: 1, placeholder: false, lines: [], gaps: [] },
    ...{ subtotalCents: 50_000, overheadPct: 0, overheadCents: 0, profitPct: 0, profitCents: 0 },
    ...{ stacking: 'stacked' as const, totalCents: 50_000, hours: 4 },
  };
  const contract = {
    ...{ currency: 'USD' as const, originalSumCents: 8_400_000, previousChangesCents: 0, beforeCents: 8_400_000 },
    ...{ thisChangeCents: 50_000, afterCents: 8_450_000, daysBefore: 60, daysAfter: 61 },
    ...{ finishBefore: null, finishAfter: null },
  };
  return {
    format: 'underlath.change-order/1',
    ...{ changeOrderId: 'order', number: 1, version: 1 },
    company: { name: 'Bench & Vise', licenseNumber: null, phone: null, email: null, address: null },
    project: { id: 'project', name: 'Wren cottage', siteAddress: '2 Mortise Row', clientName: 'Ines Wren' },
    wording: {
      ...{ headline: words('A plate'), found: item.found, why: item.why, ifNot: item.ifNot },
      note: words(''),
    },
    ...{ items: [item], price, days: 1, contract, cautions: [], consent: { id: 'c', text: words('I agree.') } },
    ...{ sentAt: '2026-03-04T17:05:00Z', sentBy: 'Bench', expiresAt: '2026-03-18T17:05:00Z' },
    record: { seq: 1, hash: 'a'.repeat(64) },
  };
}
