import { readCarFile, readCarText, type LoadedCar } from './carSource';
import { CommandError } from './commandError';

type Kept = { readonly car: LoadedCar; readonly weight: number } | { readonly error: CommandError; readonly weight: number };

/** Cars kept, and bytes of text kept as their keys: a batch of a million lines holds no more than this. */
const MOST_CARS = 64;
const MOST_BYTES = 64 * 1024 * 1024;

/** Cars that have been read, the least recently asked for forgotten first. A car that was refused stays refused. */
export class CarCache {
  private readonly kept = new Map<string, Kept>();
  private bytes = 0;

  /** The car in a file; the file is read once. */
  async file(path: string): Promise<LoadedCar> {
    return this.find(`file ${path}`, () => readCarFile(path));
  }

  /** The car in a text. */
  async text(text: string): Promise<LoadedCar> {
    return this.find(`text ${text}`, () => readCarText(text));
  }

  private async find(key: string, read: () => LoadedCar | Promise<LoadedCar>): Promise<LoadedCar> {
    const known = this.kept.get(key);
    if (known) this.kept.delete(key);
    const found = known ?? (await this.read(key.length, read));
    if (!known) this.bytes += found.weight;
    this.kept.set(key, found);
    this.forget();
    if ('error' in found) throw found.error;
    return found.car;
  }

  private async read(weight: number, read: () => LoadedCar | Promise<LoadedCar>): Promise<Kept> {
    try {
      return { car: await read(), weight };
    } catch (thrown) {
      if (thrown instanceof CommandError) return { error: thrown, weight };
      throw thrown;
    }
  }

  private forget(): void {
    for (const [key, { weight }] of this.kept) {
      if (this.kept.size <= 1 || (this.kept.size <= MOST_CARS && this.bytes <= MOST_BYTES)) return;
      this.kept.delete(key);
      this.bytes -= weight;
    }
  }
}
