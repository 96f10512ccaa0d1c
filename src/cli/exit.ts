import { type DocumentIssue, issueText, type Outcome } from "../index.js";
import { english } from "../words/index.js";

/** What the process ends with; scripts can tell the cases apart. */
export const EXIT = {
  ok: 0,
  notReachable: 1,
  badInput: 2,
  numericalFailure: 3,
  internalError: 70,
  interrupted: 130,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** Exit code and words for an outcome without a result. */
export function failureOf(outcome: Exclude<Outcome<unknown>, { status: "completed" }>): {
  readonly code: ExitCode;
  readonly lines: readonly string[];
} {
  switch (outcome.status) {
    case "refused":
      return { code: EXIT.badInput, lines: outcome.issues.map(issueText) };
    case "cancelled":
      return { code: EXIT.interrupted, lines: [english(outcome.message)] };
    case "failed":
      return { code: EXIT.numericalFailure, lines: [`numerical failure: ${english(outcome.message)}`] };
  }
}

/** Input that cannot be used, found while reading files and flags. */
export class BadInput extends Error {
  override readonly name = "BadInput";
  constructor(readonly issues: readonly DocumentIssue[]) {
    super(issues.map(issueText).join("\n"));
  }
}
