import { createRequire } from 'node:module';
import type { Locale } from '@underlath/rules';
import PDFDocument from 'pdfkit';

const require = createRequire(import.meta.url);
const fontFile = (style: string) =>
  require.resolve(`@expo-google-fonts/atkinson-hyperlegible-next/${style}/AtkinsonHyperlegibleNext_${style}.ttf`);

export const ink = '#14171a';
const quiet = '#4a5158';
export const rule = '#9aa1a8';
const marginPt = 54;
/** US letter. */
const pageWidthPt = 612;
export const textWidthPt = pageWidthPt - 2 * marginPt;

/** The library's own types leave out `bbox` and `scope`, which it writes (structure element options of pdfkit 0.20). */
interface StructureOptions {
  alt?: string;
  bbox?: [number, number, number, number];
  scope?: 'Column' | 'Row';
}
type StructureChild = PDFKit.PDFStructureElementChild;

type Align = 'left' | 'right';
export interface Column {
  readonly widthPt: number;
  readonly align?: Align;
}
interface TextStyle {
  readonly bold?: boolean;
  readonly sizePt?: number;
  readonly color?: string;
  readonly gapPt?: number;
}

export interface SheetOptions {
  readonly title: string;
  readonly author: string;
  readonly locale: Locale;
  readonly createdAt: Date;
  /** Stands at the foot of every page, before the page number. */
  readonly footer: string;
  readonly pageWord: string;
}

/** A tagged PDF document that is written from top to bottom: headings, paragraphs, tables and figures, each with its place in the structure tree. Points are 1/72 in. */
export class Sheet {
  readonly doc: PDFKit.PDFDocument;
  private pages = 0;
  /** The style of the text being written; a footer drawn in the middle of it must leave it as it was. */
  private current: TextStyle = {};
  private readonly options: SheetOptions;

  constructor(options: SheetOptions) {
    this.options = options;
    this.doc = new PDFDocument({
      size: 'LETTER',
      margins: { top: marginPt, bottom: marginPt + 10, left: marginPt, right: marginPt },
      pdfVersion: '1.7',
      tagged: true,
      lang: options.locale === 'es' ? 'es-US' : 'en-US',
      displayTitle: true,
      info: { Title: options.title, Author: options.author, CreationDate: options.createdAt },
      autoFirstPage: false,
    });
    this.doc.registerFont('text', fontFile('400Regular'));
    this.doc.registerFont('bold', fontFile('700Bold'));
    this.doc.on('pageAdded', () => this.drawFooter());
    this.doc.addPage();
  }

  title(words: string): void {
    this.tagged('H1', words, { bold: true, sizePt: 22, gapPt: 6 });
  }

  heading(words: string): void {
    this.keep(80);
    this.doc.moveDown(0.7);
    this.tagged('H2', words, { bold: true, sizePt: 14, gapPt: 3 });
  }

  subheading(words: string): void {
    this.keep(48);
    this.doc.moveDown(0.3);
    this.tagged('H3', words, { bold: true, sizePt: 10.5, gapPt: 1 });
  }

  paragraph(words: string, style: TextStyle = {}): void {
    if (words) this.tagged('P', words, { sizePt: 10, gapPt: 4, ...style });
  }

  list(items: readonly string[], style: TextStyle = {}): void {
    if (items.length === 0) return;
    const list = this.doc.struct('L');
    this.doc.addStructure(list);
    for (const item of items) {
      const body = this.element('LBody', () => this.write(`– ${item}`, { sizePt: 10, gapPt: 2, ...style }));
      list.add(this.element('LI', [body]));
    }
    list.end();
    this.doc.moveDown(0.2);
  }

  /** Rows of cells; the first row is the header when `header` is set, and a bold row ends with the rule above it. */
  table(
    columns: readonly Column[],
    rows: readonly { readonly cells: readonly string[]; readonly bold?: boolean }[],
    options: { readonly header?: boolean; readonly sizePt?: number } = {},
  ): void {
    const table = this.doc.struct('Table');
    this.doc.addStructure(table);
    rows.forEach((row, at) => {
      const isHeader = options.header === true && at === 0;
      const bold = row.bold === true || isHeader;
      const heightPt = this.rowHeight(columns, row.cells, bold, options.sizePt ?? 10);
      this.keep(heightPt);
      const topPt = this.doc.y;
      if (at > 0) this.line(topPt);
      let leftPt = marginPt;
      const cells = columns.map((column, index) => {
        const xPt = leftPt;
        leftPt += column.widthPt;
        const draw = () => {
          this.style({ bold, sizePt: options.sizePt ?? 10 });
          this.doc.text(row.cells[index] ?? '', xPt, topPt + 3, {
            width: column.widthPt - 8,
            align: column.align ?? 'left',
          });
        };
        return isHeader ? this.element('TH', draw, { scope: 'Column' }) : this.element('TD', draw);
      });
      table.add(this.element('TR', cells));
      this.doc.x = marginPt;
      this.doc.y = topPt + heightPt;
    });
    table.end();
    this.doc.moveDown(0.4);
  }

  /** A drawing or picture with its text equivalent, `heightPt` high, kept on one page. */
  figure(alt: string, heightPt: number, draw: (topPt: number) => void): void {
    this.keep(heightPt);
    const topPt = this.doc.y;
    this.doc.addStructure(
      this.element('Figure', () => draw(topPt), {
        alt,
        bbox: [marginPt, topPt, marginPt + textWidthPt, topPt + heightPt],
      }),
    );
    this.doc.x = marginPt;
    this.doc.y = topPt + heightPt;
  }

  /** One element of the structure tree; a function child draws its content. */
  element(type: string, children: StructureChild | StructureChild[], options: StructureOptions = {}) {
    return this.doc.struct(type, options as PDFKit.Mixins.StructureElementOptions, children);
  }

  get leftPt(): number {
    return marginPt;
  }

  /** Starts a new page unless this much room is left. */
  keep(heightPt: number): void {
    if (this.doc.y + heightPt > this.doc.page.height - this.doc.page.margins.bottom) this.doc.addPage();
  }

  style(style: TextStyle): void {
    const { bold = false, sizePt = 10, color = ink } = style;
    this.current = style;
    this.doc
      .font(bold ? 'bold' : 'text')
      .fontSize(sizePt)
      .fillColor(color);
  }

  private tagged(tag: string, words: string, style: TextStyle): void {
    this.doc.addStructure(this.element(tag, () => this.write(words, style)));
  }

  private write(words: string, style: TextStyle): void {
    this.style(style);
    this.doc.text(words, marginPt, this.doc.y, { width: textWidthPt, lineGap: 1.5 });
    this.doc.y += style.gapPt ?? 0;
  }

  private rowHeight(columns: readonly Column[], cells: readonly string[], bold: boolean, sizePt: number): number {
    this.style({ bold, sizePt });
    const heights = columns.map((column, at) =>
      this.doc.heightOfString(cells[at] || ' ', { width: column.widthPt - 8 }),
    );
    return Math.max(...heights) + 6;
  }

  private line(yPt: number): void {
    this.doc.markContent('Artifact', { type: 'Layout' });
    this.doc.lineWidth(0.5).strokeColor(rule);
    this.doc
      .moveTo(marginPt, yPt)
      .lineTo(marginPt + textWidthPt, yPt)
      .stroke();
    this.doc.endMarkedContent();
  }

  /** Drawn as each page begins, outside the structure tree. */
  private drawFooter(): void {
    this.pages += 1;
    const { doc } = this;
    const [xPt, yPt, bottomPt] = [doc.x, doc.y, doc.page.margins.bottom];
    // Below the bottom margin the library would start another page.
    doc.page.margins.bottom = 0;
    doc.save();
    doc.markContent('Artifact', { type: 'Pagination' });
    doc.font('text').fontSize(7).fillColor(quiet);
    const words = `${this.options.footer} · ${this.options.pageWord} ${this.pages}`;
    doc.text(words, marginPt, doc.page.height - 44, { width: textWidthPt, lineBreak: true, height: 30 });
    doc.endMarkedContent();
    doc.restore();
    doc.page.margins.bottom = bottomPt;
    doc.x = xPt;
    doc.y = yPt;
    this.style(this.current);
  }
}
