import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, rmSync, statSync } from "node:fs";
import type { IncomingMessage, ServerResponse } from "node:http";
import { join } from "node:path";
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from "playwright-core";
import { afterAll, beforeAll, expect } from "vitest";
// @ts-expect-error plain JavaScript, shared with the pictures
import { serveWeb } from "../../scripts/serve-web.mjs";

const CHROMIUM = process.env.CHROMIUM ?? "/usr/bin/chromium";
const ROOT = join(import.meta.dirname, "../..");
const BUILT = join(ROOT, "dist/web");

/** Without a browser these tests cannot run; where the project is checked as a whole it has to be there. */
export const withoutBrowser = !existsSync(CHROMIUM) && process.env.CI === undefined;
if (withoutBrowser)
  console.log(`No browser at ${CHROMIUM} (CHROMIUM names another): the web app's tests are skipped.`);

export const PHONE = { width: 360, height: 740 };
export const DESK = { width: 1280, height: 800 };

export interface Site {
  readonly url: string;
  readonly browser: Browser;
  close(): Promise<void>;
}

/** The built app on a free port, with the content policy of a base's server, and a browser. */
export async function openSite(
  answer?: (request: IncomingMessage, response: ServerResponse) => boolean,
): Promise<Site> {
  await built();
  const server = await serveWeb(BUILT, answer);
  const browser = await chromium.launch({
    executablePath: CHROMIUM,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
  return {
    url: server.url,
    browser,
    async close() {
      await browser.close();
      await server.close();
    },
  };
}

export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  /** What the page complained of; a test that expects a lost network takes those away itself. */
  readonly complaints: string[];
}

/** When the tests' pages believe it is, where nothing else is said: nine in the evening of an invented winter's night. */
export const EVENING = "2027-01-14T21:00:00+01:00";

/** A page of its own. Its clock goes on from `from`, so that what is seen does not depend on when the tests run. */
export async function visit(
  { browser, url }: Site,
  { from = EVENING, ...options }: BrowserContextOptions & { readonly from?: string } = {},
): Promise<Visit> {
  const context = await browser.newContext({ timezoneId: "Europe/Oslo", locale: "en-GB", ...options });
  await context.addInitScript(beginAt, Date.parse(from) - Date.now());
  const page = await context.newPage();
  page.setDefaultTimeout(45_000);
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  await page.goto(url);
  return { page, context, complaints };
}

export interface OnDemo extends Visit {
  readonly url: string;
}

/** A phone on the demo base for the tests of this `describe`, there from their first on. */
export function onDemo(
  options: Parameters<typeof visit>[1] = {},
  prepare: (seen: OnDemo) => Promise<void> = async () => {},
): OnDemo {
  const here = {} as OnDemo;
  let site: Site;
  beforeAll(async () => {
    site = await openSite();
    const seen = await visit(site, { viewport: PHONE, reducedMotion: "reduce", ...options });
    Object.assign(here, seen, { url: site.url });
    await openDemo(here.page);
    await prepare(here);
  }, 300_000);
  afterAll(async () => {
    await here.context?.close();
    await site?.close();
  });
  return here;
}

/** Loads the page again, its clock further on by `ms` than it would be. */
export async function laterBy({ page, context }: Visit, ms: number): Promise<void> {
  await context.addInitScript(beginAt, ms);
  await page.reload();
}

/** Shifts the page's clock by `shift` [ms]; it goes on as fast as ever. */
function beginAt(shift: number): void {
  const Real = Date;
  globalThis.Date = new Proxy(Real, {
    construct: (_, given) => Reflect.construct(Real, given.length === 0 ? [Real.now() + shift] : given),
    apply: () => new Real(Real.now() + shift).toString(),
    get: (_, key) => (key === "now" ? () => Real.now() + shift : Reflect.get(Real, key)),
  });
}

/** Writes a note into the logbook that is shown. */
export async function note(page: Page, text: string): Promise<void> {
  await page.getByLabel("A note").fill(text);
  await page.getByRole("button", { name: "Write a note" }).click();
  await page.getByText(`Note: ${text}`).waitFor();
}

/** A first aircraft of its own, the shortest way; its plan is there afterwards. */
export async function firstAircraft(page: Page): Promise<void> {
  await page.getByRole("button", { name: /plan my aircraft/i }).click();
  await page.getByLabel("What do you call it?").fill("Ptarmigan");
  await page.getByLabel(/silicone sump pad, 220 W/).check();
  await page.getByText("In plain words").click();
  await page.getByRole("button", { name: "Make the plan" }).click();
  await page.locator(".placard .main", { hasText: "Ptarmigan" }).waitFor({ timeout: 60_000 });
}

/** The demo base with its first plans. */
export async function openDemo(page: Page): Promise<void> {
  await page.getByRole("button", { name: /look at the demo/i }).click();
  await page.getByRole("slider", { name: "Departure of Wren" }).waitFor({ timeout: 120_000 });
  await page.locator(".placard .main", { hasText: "Lynx: plug in at" }).waitFor({ timeout: 120_000 });
}

/** No plan is being worked on. */
export async function settled(page: Page): Promise<void> {
  await page.locator(".busy").first().waitFor({ state: "detached", timeout: 120_000 });
}

/** The screen's sentence says so. */
export async function mainSays(page: Page, text: RegExp, timeout = 180_000): Promise<void> {
  await page.locator(".placard .main", { hasText: text }).waitFor({ timeout });
}

export function expectNoComplaints({ complaints }: Visit): void {
  expect(complaints).toEqual([]);
}

/** Builds the app where a source is newer than what was built; one of several test files does it for all. */
async function built(): Promise<void> {
  const lock = join(ROOT, "dist/.web-lock");
  mkdirSync(join(ROOT, "dist"), { recursive: true });
  for (;;) {
    try {
      mkdirSync(lock);
      break;
    } catch {
      // Somebody builds; a lock of a run that was killed is taken away after two minutes.
      if (existsSync(lock) && Date.now() - statSync(lock).mtimeMs > 120_000)
        rmSync(lock, { recursive: true });
      await new Promise((resolve) => setTimeout(resolve, 200));
    }
  }
  try {
    const made = join(BUILT, "index.html");
    const isFresh = existsSync(made) && statSync(made).mtimeMs > newest(join(ROOT, "src"));
    // A process of its own: within the tests the app would be built for tests.
    if (!isFresh) {
      execFileSync(
        process.execPath,
        [join(ROOT, "node_modules/vite/bin/vite.js"), "build", "--logLevel", "error"],
        {
          cwd: ROOT,
          env: { ...process.env, NODE_ENV: "production" },
          stdio: "inherit",
        },
      );
    }
  } finally {
    rmSync(lock, { recursive: true });
  }
}

function newest(folder: string): number {
  return Math.max(
    ...readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => statSync(join(entry.parentPath, entry.name)).mtimeMs),
  );
}
