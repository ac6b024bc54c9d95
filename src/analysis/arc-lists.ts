/** Lists of edges that were followed, one list a vertex. */
export class ArcLists {
  #vertex = new Int32Array(1024);
  #link = new Int32Array(1024);
  #next = new Int32Array(1024);
  #count = 0;

  clear(): void {
    this.#count = 0;
  }

  /** Puts an edge before those of a list; returns the list's new head. */
  add(head: number, vertex: number, link: number): number {
    if (this.#count === this.#vertex.length) this.#grow();
    const at = this.#count++;
    this.#vertex[at] = vertex;
    this.#link[at] = link;
    this.#next[at] = head;
    return at;
  }

  vertex(arc: number): number {
    return this.#vertex[arc]!;
  }

  link(arc: number): number {
    return this.#link[arc]!;
  }

  next(arc: number): number {
    return this.#next[arc]!;
  }

  #grow(): void {
    this.#vertex = doubled(this.#vertex);
    this.#link = doubled(this.#link);
    this.#next = doubled(this.#next);
  }
}

function doubled(array: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(array.length * 2);
  larger.set(array);
  return larger;
}
