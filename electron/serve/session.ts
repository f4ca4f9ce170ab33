import { randomBytes, timingSafeEqual } from 'node:crypto';

const secret = (): string => randomBytes(32).toString('base64url');

const isSame = (given: string, kept: string): boolean => {
  const [a, b] = [Buffer.from(given), Buffer.from(kept)];
  return a.length === b.length && timingSafeEqual(a, b);
};

/**
 * Who may ask: the one window that opened the address with the token. The token is good once; what it is exchanged for is
 * a cookie that no script reads and no other site sends. Cookies do not know ports, so its name holds the port.
 */
export class Session {
  private token: string | null = secret();
  private readonly key = secret();
  private readonly cookieName: string;

  constructor(port: number) {
    this.cookieName = `jounce-${port}`;
  }

  /** The token, to be put into the address that is opened; null once it was used. */
  get openToken(): string | null {
    return this.token;
  }

  /** The cookie for a token, or null when it is not the token or was used before. */
  exchange(token: string): string | null {
    if (this.token === null || !isSame(token, this.token)) return null;
    this.token = null;
    return `${this.cookieName}=${this.key}; HttpOnly; SameSite=Strict; Path=/`;
  }

  /** Whether a `Cookie` header holds what the token was exchanged for. */
  admits(cookieHeader: string | undefined): boolean {
    const values = (cookieHeader ?? '').split(';').map((part) => part.trim().split('='));
    return values.some(([name, value]) => name === this.cookieName && value !== undefined && isSame(value, this.key));
  }
}
