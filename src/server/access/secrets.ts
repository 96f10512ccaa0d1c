import { createHash, randomBytes, randomInt, timingSafeEqual } from "node:crypto";

/** 256 random bits, as text that fits a header, a cookie and an address. */
export function newToken(): string {
  return randomBytes(32).toString("base64url");
}

/** SHA-256, hex. Enough for a token, which cannot be guessed; never for a password. */
export function tokenHash(token: string): string {
  return createHash("sha256").update(token).digest("hex");
}

/** Whether two secrets are the same, in a time that tells nothing of where they differ. */
export function sameSecret(a: string, b: string): boolean {
  return timingSafeEqual(createHash("sha256").update(a).digest(), createHash("sha256").update(b).digest());
}

/** To be read from a terminal and typed: 12 characters without look-alikes, 58 bits. @example "K7QM-29XD-TPHC" */
export function newSetUpCode(): string {
  const characters = Array.from({ length: 12 }, () => LETTERS[randomInt(LETTERS.length)]);
  return characters.join("").replace(/(.{4})(?=.)/g, "$1-");
}

const LETTERS = "ABCDEFGHJKMNPQRSTVWXYZ23456789";
