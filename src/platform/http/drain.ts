/** Lets a stopping process end what would never end by itself: open event streams. Whoever opens one registers how to end it. */
export class Drain {
  private readonly ends = new Set<() => void>();
  private begun = false;

  get draining(): boolean {
    return this.begun;
  }

  get open(): number {
    return this.ends.size;
  }

  /** @returns call it when the stream has ended by itself */
  track(end: () => void): () => void {
    if (this.begun) {
      end();
      return () => undefined;
    }
    this.ends.add(end);
    return () => this.ends.delete(end);
  }

  begin(): void {
    this.begun = true;
    for (const end of [...this.ends]) end();
    this.ends.clear();
  }
}
