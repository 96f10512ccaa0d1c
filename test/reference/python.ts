import { execFileSync } from "node:child_process";

/** The first python3 that has scipy; Debian's own stands behind whatever else is on the path. */
export function pythonWithScipy(): string | undefined {
  return ["python3", "/usr/bin/python3"].find((command) => {
    try {
      execFileSync(command, ["-c", "import scipy.integrate, scipy.optimize"], { stdio: "ignore" });
      return true;
    } catch {
      return false;
    }
  });
}
