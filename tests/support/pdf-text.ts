import { once } from 'node:events';
import { Worker } from 'node:worker_threads';

export interface PdfFacts {
  /** All pages in order; lines are joined with one space. */
  text: string;
  title: string;
  language: string;
  isTagged: boolean;
  pageCount: number;
  imageCount: number;
}

/** What a reader of the document finds in it. */
export async function readPdf(bytes: Buffer): Promise<PdfFacts> {
  const worker = new Worker(new URL('./pdf-reader.mjs', import.meta.url), { workerData: bytes, execArgv: [] });
  const [facts] = await once(worker, 'message');
  return facts as PdfFacts;
}
