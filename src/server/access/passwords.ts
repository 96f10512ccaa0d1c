import { hash, verify } from "@node-rs/argon2";
import type { DocumentIssue } from "../../documents/index.js";
import { COMMON_STEMS, KEY_RUNS } from "./common-passwords.js";

/** [characters] OWASP ASVS 4.0.3, 2.1.1 and 2.1.2. */
const SHORTEST = 12;
const LONGEST = 128;

/** Argon2id (the library's default kind) with 19 MiB, 2 passes, 1 lane: OWASP Password Storage Cheat Sheet. */
const COST = { memoryCost: 19456, timeCost: 2, parallelism: 1 } as const;

export function hashPassword(password: string): Promise<string> {
  return hash(normal(password), COST);
}

/**
 * Whether a password is the one of an account. Where there is no account, another hash is worked through all the same,
 * so that the time says nothing of which names exist.
 */
export async function passwordFits(password: string, passwordHash: string | undefined): Promise<boolean> {
  nobody ??= hashPassword("nobody has this password");
  const fits = await verify(passwordHash ?? (await nobody), normal(password));
  return fits && passwordHash !== undefined;
}

let nobody: Promise<string> | undefined;

/** What is wrong with a new password; nothing when it will do. The password itself is never shown. */
export function passwordIssues(password: string, path: string, accountName: string): DocumentIssue[] {
  const length = [...normal(password)].length;
  const wrong = (expected: string, received: string) => [{ path, expected, received }];
  if (length < SHORTEST) return wrong(`at least ${SHORTEST} characters`, `${length}`);
  if (length > LONGEST) return wrong(`at most ${LONGEST} characters`, `${length}`);
  const plain = normal(password).toLowerCase();
  const name = normal(accountName).toLowerCase();
  if (isCommon(plain) || (name.length > 2 && isCommon(plain.replaceAll(name, "")))) {
    return wrong(
      "a password that is not easily guessed, such as four or five words that do not belong together",
      "one made of a common word, name, repetition or run of keys",
    );
  }
  return [];
}

/** Two ways to type the same letter give the same password. */
function normal(password: string): string {
  return password.normalize("NFKC");
}

function isCommon(plain: string): boolean {
  const letters = plain.replace(/[^\p{L}]/gu, "");
  const word = shortestRepeated(letters);
  if (COMMON_STEMS.has(word) || COMMON_STEMS.has(letters)) return true;
  const undisguised = unleet(plain.replace(/[^\p{L}]+$/u, "")).replace(/[^\p{L}]/gu, "");
  if (COMMON_STEMS.has(shortestRepeated(undisguised))) return true;
  // What is left apart from the repeated piece and runs of keys has to be something.
  return new Set(shortestRepeated(plain)).size < 5 || withoutRuns(plain).length < 4;
}

/** "abcabcabc" is "abc"; a text that repeats nothing is itself. */
function shortestRepeated(text: string): string {
  for (let length = 1; length <= text.length / 2; length += 1) {
    const piece = text.slice(0, length);
    if (piece.repeat(Math.ceil(text.length / length)).startsWith(text)) return piece;
  }
  return text;
}

function unleet(text: string): string {
  return text.replace(/[013457@$!]/g, (character) => LEET[character] ?? character);
}

const LEET: Readonly<Record<string, string>> = {
  "0": "o",
  "1": "i",
  "3": "e",
  "4": "a",
  "5": "s",
  "7": "t",
  "@": "a",
  $: "s",
  "!": "i",
};

/** Takes out every stretch of four or more keys of a run, forwards or backwards. */
function withoutRuns(text: string): string {
  let left = "";
  let at = 0;
  while (at < text.length) {
    const length = runAt(text, at);
    if (length >= 4) at += length;
    else left += text[at++];
  }
  return left;
}

function runAt(text: string, at: number): number {
  let longest = 0;
  for (const run of BOTH_WAYS) {
    while (longest < run.length && at + longest < text.length) {
      if (!run.includes(text.slice(at, at + longest + 1))) break;
      longest += 1;
    }
  }
  return longest;
}

const BOTH_WAYS = KEY_RUNS.flatMap((run) => [run, [...run].reverse().join("")]);
