import { type Fence, setFence, type Tx } from './fence.ts';

/** A transaction that other work joins, each piece as a savepoint, one after another. */
export class JoinedWork {
  /** False once the transaction ends: what goes on after it is on its own. */
  isOpen = true;
  private turn: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly tx: Tx,
    private readonly fence: Fence,
  ) {}

  /** A failure undoes this piece alone, so that it may be tried again. `inner` is for work that it starts itself. */
  join<Result>(fence: Fence, work: (tx: Tx, inner: JoinedWork) => Promise<Result>): Promise<Result> {
    const done = this.turn.then(() => this.run(fence, work));
    this.turn = done.catch(() => {});
    return done;
  }

  private async run<Result>(fence: Fence, work: (tx: Tx, inner: JoinedWork) => Promise<Result>): Promise<Result> {
    await this.tx.$executeRawUnsafe('savepoint piece');
    try {
      const isSame = fence.companyId === this.fence.companyId && !fence.userId && !fence.tokenHash;
      if (!isSame) await setFence(this.tx, fence);
      const piece = ownFace(this.tx);
      const result = await work(piece, new JoinedWork(piece, isSame ? this.fence : fence));
      await this.tx.$executeRawUnsafe('release savepoint piece');
      if (!isSame) await setFence(this.tx, this.fence);
      return result;
    } catch (error) {
      // On a connection that is lost there is nothing left to undo, and the first error says why.
      await this.tx.$executeRawUnsafe('rollback to savepoint piece').catch(() => {});
      throw error;
    }
  }
}

/** Another object for each piece: what is remembered by transaction, such as a turn taken, ends with its savepoint. */
const ownFace = (tx: Tx): Tx => new Proxy(tx, { get: (target, name) => Reflect.get(target, name) });
