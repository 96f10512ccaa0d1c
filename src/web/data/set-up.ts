import type { DocumentIssue } from "../../documents/index.js";
import type { BaseSetUp } from "../../logbook/index.js";
import { isoOf } from "../units/times.js";
import { app, newId } from "./app.svelte.js";

/** Keeps a set-up as a new event, or says what is wrong with it and keeps nothing. */
export async function saveSetUp(base: BaseSetUp): Promise<readonly DocumentIssue[]> {
  const issues = await app.planner.ask("readSetUp", { base });
  if (issues.length === 0) {
    await app.record({ kind: "set-up", id: newId(), at: isoOf(Date.now()), base });
  }
  return issues;
}
