// The browser's cache inside Node, as far as the app uses it: named stores of answers by address.

class FakeCache {
  kept = new Map<string, Response>();

  async put(path: string, reply: Response): Promise<void> {
    this.kept.set(addressOf(path), reply.clone());
  }

  async match(asked: Request | string): Promise<Response | undefined> {
    return this.kept.get(addressOf(asked))?.clone();
  }

  async keys(): Promise<Request[]> {
    return [...this.kept.keys()].map((url) => new Request(url));
  }

  async delete(asked: Request | string): Promise<boolean> {
    return this.kept.delete(addressOf(asked));
  }
}

const addressOf = (asked: Request | string): string => (typeof asked === "string" ? new URL(asked, "https://yard.example").href : asked.url);

export class FakeCaches {
  stores = new Map<string, FakeCache>();

  async open(name: string): Promise<FakeCache> {
    return this.stores.get(name) ?? this.stores.set(name, new FakeCache()).get(name)!;
  }

  async delete(name: string): Promise<boolean> {
    return this.stores.delete(name);
  }
}
