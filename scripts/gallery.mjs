// Pictures of every screen of the web app, at two sizes and in both lights, into docs/screens.
import { mkdir, readdir, stat } from "node:fs/promises";
import { chromium } from "playwright-core";
import { serveWeb } from "./serve-web.mjs";

const OUT = process.argv[2] ?? "docs/screens";
const ONLY = process.argv[3];
const wanted = (name) => ONLY === undefined || name.startsWith(ONLY);
const FORM = process.argv[4] === "png" ? "png" : "jpeg";
const SIZES = [
  { name: "phone", width: 360, height: 740 },
  { name: "desk", width: 1280, height: 800 },
];
/** A winter evening, so that the pictures show a night. */
const EVENING = new Date("2026-01-14T18:04:00+01:00");
/** [px] what goes on below is left out of the picture. */
const MOST = 1300;
/** Screens that are a form until asked: what to press, and the answer's first heading. */
const ASKED = {
  kit: { press: "Compare", answer: "Tonight" },
  thaw: { press: /^Work it out/, answer: "What to do" },
  winter: { press: "Compare", answer: "The winter in numbers" },
};
const SCREENS = (await readdir("src/web/screens", { withFileTypes: true }))
  .filter((entry) => entry.isDirectory() && entry.name !== "welcome")
  .map(({ name }) => name);

const server = await serveWeb("dist/web");
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
  ],
});
await mkdir(OUT, { recursive: true });
for (const size of SIZES) {
  const context = await browser.newContext({
    viewport: { width: size.width, height: size.height },
    timezoneId: "Europe/Oslo",
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  page.on(
    "console",
    (message) => message.type() === "error" && console.error(`${size.name}: ${message.text()}`),
  );
  page.on("pageerror", (error) => console.error(`${size.name}: ${error}`));
  await page.clock.setFixedTime(EVENING);
  await page.goto(server.url);
  const shot = async (name, full = false, top = undefined) => {
    if (!wanted(name)) return;
    for (const light of ["light", "dark"]) {
      await page.emulateMedia({ colorScheme: light });
      await page.waitForTimeout(150);
      // As tall as the page, so that the bar at the foot stands at the foot.
      const tall = full ? await page.evaluate(() => document.documentElement.scrollHeight) : size.height;
      await page.setViewportSize({ width: size.width, height: Math.max(size.height, Math.min(tall, MOST)) });
      if (top === undefined) await page.evaluate(() => scrollTo(0, 0));
      else await top.evaluate((element) => element.scrollIntoView({ block: "start" }));
      await page.waitForTimeout(100);
      await page.screenshot({
        path: `${OUT}/${name}-${size.name}-${light}.${FORM}`,
        type: FORM,
        ...(FORM === "jpeg" ? { quality: 38 } : {}),
      });
      await page.setViewportSize({ width: size.width, height: size.height });
    }
  };
  await page.getByRole("heading", { level: 1 }).waitFor();
  await shot("welcome");
  await page.getByRole("button", { name: /my aircraft/i }).click();
  await page.getByRole("combobox").waitFor();
  await shot("first", true);
  await page.getByRole("button", { name: /^back$/i }).click();
  await page.getByRole("button", { name: /demo/i }).click();
  await page.locator(".flag").nth(3).waitFor({ timeout: 60_000 });
  await page.locator(".busy").first().waitFor({ state: "detached", timeout: 120_000 });
  await page.getByText(/frost (on|expected)/i).waitFor({ timeout: 120_000 });
  for (const screen of SCREENS.filter(wanted)) {
    await page.goto(`${server.url}#/${screen}`);
    await page.locator("main h1").waitFor();
    await page.locator("[aria-busy='true']").first().waitFor({ state: "detached", timeout: 60_000 });
    // Engine parts have most to tell when they are warm.
    if (screen === "aircraft") await page.locator(".jumps button").last().click();
    await page.waitForTimeout(1500);
    await shot(screen, true);
    const asked = ASKED[screen];
    if (asked === undefined || !wanted(`${screen}-answer`)) continue;
    await page.getByRole("button", { name: asked.press }).click();
    const answer = page.locator("section", { has: page.getByRole("heading", { name: asked.answer }) }).last();
    await answer.waitFor({ timeout: 600_000 });
    await shot(`${screen}-answer`, true, answer);
  }
  await context.close();
}
await browser.close();
await server.close();

let bytes = 0;
for (const name of await readdir(OUT)) bytes += (await stat(`${OUT}/${name}`)).size;
console.log(`${OUT}: ${(bytes / 1e6).toFixed(2)} MB`);
