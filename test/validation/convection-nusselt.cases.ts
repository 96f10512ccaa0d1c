import {
  nusseltChurchillChuHorizontalCylinder,
  nusseltChurchillChuVerticalPlate,
  nusseltChurchillSphere,
  nusseltLaminarPlate,
  nusseltMcAdamsPlateAssisted,
  nusseltMcAdamsPlateOpposed,
  nusseltPlate,
  nusseltRoundJet,
  nusseltVdiPlateOpposed,
} from "../../src/properties/index.js";
import { relative, type ValidationCase, type ValidationGroup } from "./case.js";

const HT = "tests of the ht library (C. Bell)";
const SAME_FORMULA = "same formula in double precision";

const SPHERE = [
  2.415066377224484, 2.7381040025746382, 3.3125553308635283, 4.3340933312726548, 6.1507272232235417,
  9.3821675084055443, 15.145453144794978, 25.670869440317578, 47.271761310748289, 96.479305628419823,
  204.74310854292045,
];

export const CONVECTION_NUSSELT_VALIDATION: ValidationGroup = {
  title: "Nusselt numbers",
  part: "physics",
  cases: [
    exact("vertical plate (Churchill-Chu), Pr 0.69, Gr 2.63e9", 147.16185223770603, () =>
      nusseltChurchillChuVerticalPlate(0.69 * 2.63e9, 0.69),
    ),
    exact("horizontal cylinder (Churchill-Chu), Pr 0.69, Gr 2.63e9", 139.13493970073597, () =>
      nusseltChurchillChuHorizontalCylinder(0.69 * 2.63e9, 0.69),
    ),

    exact("hot plate facing up (McAdams), Pr 5.54, Gr 3.21e8", 181.73121274384457, () =>
      nusseltMcAdamsPlateAssisted(5.54 * 3.21e8),
    ),
    exact("hot plate facing down (McAdams), Pr 5.54, Gr 3.21e8", 55.44564799362829, () =>
      nusseltMcAdamsPlateOpposed(5.54 * 3.21e8),
    ),
    exact("hot plate facing up (McAdams), Pr 0.01, Gr 3.21e8", 22.857041558492334, () =>
      nusseltMcAdamsPlateAssisted(0.01 * 3.21e8),
    ),
    exact("hot plate facing down (McAdams), Pr 0.01, Gr 3.21e8", 11.428520779246167, () =>
      nusseltMcAdamsPlateOpposed(0.01 * 3.21e8),
    ),
    exact("hot plate facing down (VDI), Pr 5.54, Gr 3.21e8", 39.16864971535617, () =>
      nusseltVdiPlateOpposed(5.54 * 3.21e8, 5.54),
    ),
    ...SPHERE.map((nusselt, i) =>
      exact(`sphere (Churchill), Pr 0.7, Gr 1e${i}`, nusselt, () =>
        nusseltChurchillSphere(0.7 * 10 ** i, 0.7),
      ),
    ),

    exact("laminar plate, Re 1e5, Pr 0.7", 186.4378528752262, () => nusseltLaminarPlate(1e5, 0.7)),

    nusseltCase(
      "plate laminar then turbulent, Re 1e6, Pr 0.7",
      "Incropera eq. 7.38 evaluated apart",
      1299.48495,
      0.5,
      "the equation prints 871 for 871.32",
      () => nusseltPlate(1e6, 0.7),
    ),
    nusseltCase(
      "round jet on a surface, Re 2e4, Pr 0.7, H/D 4, r/D 10/3",
      "Martin 1977 in the paper's own variables D/r and H/D, evaluated apart (from memory)",
      76.524823,
      1e-4,
      SAME_FORMULA,
      () => nusseltRoundJet(2e4, 0.7, 4, 0.15),
    ),
  ],
};

function exact(name: string, expected: number, got: () => number): ValidationCase {
  return nusseltCase(name, HT, expected, relative(expected, 1e-9), SAME_FORMULA, got);
}

function nusseltCase(
  name: string,
  source: string,
  expected: number,
  tolerance: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  const mark = "computed from the published formula";
  return {
    name: `Nusselt number of a ${name}`,
    source,
    mark,
    unit: "-",
    expected,
    tolerance,
    toleranceReason,
    got,
  };
}
