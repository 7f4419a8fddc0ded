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
  lang?: string;
  bbox?: [number, number, number, number];
  scope?: 'Column' | 'Row';
}
type StructureChild = PDFKit.PDFStructureElementChild;

type Align = 'left' | 'right';
export interface SheetColumn {
  readonly widthPt: number;
  readonly align?: Align;
}
interface TextStyle {
  readonly bold?: boolean;
  readonly sizePt?: number;
  readonly color?: string;
  readonly gapPt?: number;
  /** Where the words begin and how wide they run, when that is not the page's own. */
  readonly leftPt?: number;
  readonly widthPt?: number;
}

/** Words in the language of the document, or of another one that is named for who has it read aloud. */
export type SheetWords = string | { readonly words: string; readonly lang: string };
/** One run of words, or several in a row. */
export type Run = SheetWords | readonly SheetWords[];

const partsOf = (run: Run): readonly SheetWords[] =>
  Array.isArray(run) ? (run as readonly SheetWords[]) : [run as SheetWords];
const plainOf = (words: SheetWords): string => (typeof words === 'string' ? words : words.words);
export const runText = (run: Run): string => partsOf(run).map(plainOf).join('');

/** Neighbors of the document's own language as one piece, and nothing that is empty. */
function joined(run: Run): SheetWords[] {
  const pieces: SheetWords[] = [];
  for (const part of partsOf(run)) {
    const last = pieces.at(-1);
    if (plainOf(part) === '') continue;
    if (typeof part === 'string' && typeof last === 'string') pieces[pieces.length - 1] = last + part;
    else pieces.push(part);
  }
  return pieces;
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

  title(words: Run): void {
    this.tagged('H1', words, { bold: true, sizePt: 22, gapPt: 6 });
  }

  heading(words: Run): void {
    this.keep(80);
    this.doc.moveDown(0.7);
    this.tagged('H2', words, { bold: true, sizePt: 14, gapPt: 3 });
  }

  subheading(words: Run): void {
    this.keep(48);
    this.doc.moveDown(0.3);
    this.tagged('H3', words, { bold: true, sizePt: 10.5, gapPt: 1 });
  }

  paragraph(words: Run, style: TextStyle = {}): void {
    if (runText(words)) this.tagged('P', words, { sizePt: 10, gapPt: 4, ...style });
  }

  list(items: readonly Run[], style: TextStyle = {}): void {
    if (items.length === 0) return;
    const list = this.doc.struct('L');
    this.doc.addStructure(list);
    for (const item of items) {
      const body = this.run('LBody', ['– ', ...partsOf(item)], { sizePt: 10, gapPt: 2, ...style });
      list.add(this.element('LI', [body]));
    }
    list.end();
    this.doc.moveDown(0.2);
  }

  /** Rows of cells; the first row is the header when `header` is set, and a bold row ends with the rule above it. */
  table(
    columns: readonly SheetColumn[],
    rows: readonly { readonly cells: readonly SheetWords[]; readonly bold?: boolean }[],
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
          this.doc.text(plainOf(row.cells[index] ?? ''), xPt, topPt + 3, {
            width: column.widthPt - 8,
            align: column.align ?? 'left',
          });
        };
        const cell = row.cells[index];
        const lang = typeof cell === 'object' ? { lang: cell.lang } : {};
        return isHeader ? this.element('TH', draw, { scope: 'Column', ...lang }) : this.element('TD', draw, lang);
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

  /** Words in a frame of a color, kept on one page: what must not be overlooked. */
  box(title: string, lines: readonly Run[], color: string): void {
    const insetPt = 10;
    const widthPt = textWidthPt - 2 * insetPt;
    this.style({ bold: true, sizePt: 13 });
    const titlePt = this.doc.heightOfString(title, { width: widthPt });
    this.style({ sizePt: 10.5 });
    const linesPt = lines.map((line) => this.doc.heightOfString(runText(line), { width: widthPt, lineGap: 1.5 }) + 3);
    const heightPt = titlePt + linesPt.reduce((sum, each) => sum + each, 0) + 2 * insetPt;
    this.keep(heightPt + 6);
    const topPt = this.doc.y;
    this.doc.markContent('Artifact', { type: 'Layout' });
    this.doc.rect(marginPt, topPt, textWidthPt, heightPt).lineWidth(2).stroke(color);
    this.doc.endMarkedContent();
    this.doc.y = topPt + insetPt;
    const inset = { leftPt: marginPt + insetPt, widthPt };
    this.doc.addStructure(this.run('H2', title, { bold: true, sizePt: 13, gapPt: 2, color, ...inset }));
    for (const line of lines) this.doc.addStructure(this.run('P', line, { sizePt: 10.5, gapPt: 3, ...inset }));
    this.doc.x = marginPt;
    this.doc.y = topPt + heightPt + 8;
  }

  /** Squares to tick by hand, each with what it stands for. */
  boxes(items: readonly Run[]): void {
    const sidePt = 10;
    for (const item of items) {
      this.keep(20);
      this.doc.y += 4;
      this.doc.markContent('Artifact', { type: 'Layout' });
      this.doc.rect(marginPt, this.doc.y, sidePt, sidePt).lineWidth(0.8).stroke(ink);
      this.doc.endMarkedContent();
      const leftPt = marginPt + sidePt + 8;
      this.tagged('P', item, { leftPt, widthPt: textWidthPt - sidePt - 8, gapPt: 2 });
      this.doc.x = marginPt;
    }
  }

  /** Lines to write on by hand, each with what belongs on it. */
  writingLines(labels: readonly string[]): void {
    for (const label of labels) {
      this.keep(34);
      this.doc.y += 20;
      this.line(this.doc.y);
      this.doc.y += 2;
      this.tagged('P', label, { sizePt: 8.5, gapPt: 2 });
    }
  }

  private tagged(tag: string, words: Run, style: TextStyle): void {
    this.doc.addStructure(this.run(tag, words, style));
  }

  /**
   * An element with a run of words; words of another language stand in a span that names it. A run of several pieces is
   * kept on one page: the library would take the footer of the next one for its continuation, and lose what follows.
   */
  private run(tag: string, words: Run, style: TextStyle) {
    const parts = joined(words);
    if (parts.length > 1) this.keep(this.heightOf(words, style));
    const children = parts.map((part, at) => {
      const draw = () => this.write(plainOf(part), style, at === 0, at === parts.length - 1);
      return typeof part === 'string' ? draw : this.element('Span', draw, { lang: part.lang });
    });
    return this.element(tag, children);
  }

  private heightOf(words: Run, style: TextStyle): number {
    this.style(style);
    return this.doc.heightOfString(runText(words), { width: style.widthPt ?? textWidthPt, lineGap: 1.5 });
  }

  private write(words: string, style: TextStyle, isFirst: boolean, isLast: boolean): void {
    this.style(style);
    const how = { width: style.widthPt ?? textWidthPt, lineGap: 1.5, continued: !isLast };
    if (isFirst) this.doc.text(words, style.leftPt ?? marginPt, this.doc.y, how);
    else this.doc.text(words, how);
    if (isLast) this.doc.y += style.gapPt ?? 0;
  }

  private rowHeight(
    columns: readonly SheetColumn[],
    cells: readonly SheetWords[],
    bold: boolean,
    sizePt: number,
  ): number {
    this.style({ bold, sizePt });
    const heights = columns.map((column, at) =>
      this.doc.heightOfString(plainOf(cells[at] ?? '') || ' ', { width: column.widthPt - 8 }),
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
