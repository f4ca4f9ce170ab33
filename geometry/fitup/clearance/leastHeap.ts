/** A heap with the least first: what a search looks at next. */
export class LeastHeap<Item extends { readonly least: number }> {
  private readonly items: Item[] = [];

  get size(): number {
    return this.items.length;
  }

  /** The least; there has to be one. */
  get first(): Item {
    return this.items[0];
  }

  push(item: Item): void {
    const { items } = this;
    items.push(item);
    let i = items.length - 1;
    while (i > 0) {
      const parent = (i - 1) >> 1;
      if (items[parent].least <= items[i].least) return;
      [items[parent], items[i]] = [items[i], items[parent]];
      i = parent;
    }
  }

  pop(): Item {
    const { items } = this;
    const first = items[0];
    const last = items.pop()!;
    if (items.length > 0) {
      items[0] = last;
      this.sink();
    }
    return first;
  }

  private sink(): void {
    const { items } = this;
    let i = 0;
    for (;;) {
      let least = i;
      for (const child of [2 * i + 1, 2 * i + 2]) {
        if (child < items.length && items[child].least < items[least].least) least = child;
      }
      if (least === i) return;
      [items[least], items[i]] = [items[i], items[least]];
      i = least;
    }
  }
}
