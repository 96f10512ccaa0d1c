import {
  nusseltChurchillBernsteinCylinder,
  nusseltChurchillChuHorizontalCylinder,
  nusseltChurchillChuVerticalPlate,
  nusseltChurchillOzoeLaminarPlate,
  nusseltChurchillSphere,
  nusseltHilpertCylinder,
  nusseltKreithTurbulentPlate,
  nusseltLaminarPlate,
  nusseltMcAdamsPlateAssisted,
  nusseltMcAdamsPlateOpposed,
  nusseltMorganHorizontalCylinder,
  nusseltPlate,
  nusseltZukauskasCylinder,
} from "../../src/properties/index.js";
import { relative, type ValidationCase, type ValidationGroup } from "./case.js";

const HT = "tests of the ht library (C. Bell)";
const EXAMPLE_7_3 = "Incropera, Introduction to Heat Transfer, 6th ed., Example 7.3";
const SAME_FORMULA = "same formula in double precision";
const LAST_DIGIT = "half the last digit printed";

// biome-ignore lint/suspicious/noApproximativeNumericConstant: Prandtl number of air at 300 K
const PRANDTL_STREAM = 0.707;

const SPHERE = [
  2.415066377224484, 2.7381040025746382, 3.3125553308635283, 4.3340933312726548, 6.1507272232235417,
  9.3821675084055443, 15.145453144794978, 25.670869440317578, 47.271761310748289, 96.479305628419823,
  204.74310854292045,
];
const ZUKAUSKAS = [
  0.66372630070423799, 1.4616593536687801, 3.2481853039940831, 8.7138930573143227, 26.244842388228189,
  85.768869004450067, 280.29503021904566, 1065.9610995854582,
];
const MORGAN: readonly (readonly [grashof: number, nusselt: number])[] = [
  [1e-2, 0.5136293570857],
  [1e2, 1.9853087795802],
  [1e4, 4.707783879946],
  [1e7, 26.290682760248],
  [1e10, 258.03152471533],
];

export const CONVECTION_NUSSELT_VALIDATION: ValidationGroup = {
  title: "Nusselt numbers",
  cases: [
    exact("vertical plate (Churchill-Chu), Pr 0.69, Gr 2.63e9", 147.16185223770603, () =>
      nusseltChurchillChuVerticalPlate(0.69 * 2.63e9, 0.69),
    ),
    exact("horizontal cylinder (Churchill-Chu), Pr 0.69, Gr 2.63e9", 139.13493970073597, () =>
      nusseltChurchillChuHorizontalCylinder(0.69 * 2.63e9, 0.69),
    ),
    exact("horizontal cylinder (Morgan), Pr 0.72, Gr 1e7", 24.864192615468973, () =>
      nusseltMorganHorizontalCylinder(0.72e7),
    ),
    exact("horizontal cylinder (Morgan), Pr 0.69, Gr 2.63e9", 151.3881997228419, () =>
      nusseltMorganHorizontalCylinder(0.69 * 2.63e9),
    ),
    ...MORGAN.map(([grashof, nusselt]) =>
      exact(`horizontal cylinder (Morgan), Pr 0.9, Gr ${grashof}`, nusselt, () =>
        nusseltMorganHorizontalCylinder(0.9 * grashof),
      ),
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
    ...SPHERE.map((nusselt, i) =>
      exact(`sphere (Churchill), Pr 0.7, Gr 1e${i}`, nusselt, () =>
        nusseltChurchillSphere(0.7 * 10 ** i, 0.7),
      ),
    ),
    exact("cylinder in cross flow (Churchill-Bernstein), Re 6071, Pr 0.7", 40.63708594124974, () =>
      nusseltChurchillBernsteinCylinder(6071, 0.7),
    ),
    ...(
      [
        [1e3, 16.107139],
        [1e4, 53.930097],
        [1e5, 216.554754],
      ] as const
    ).map(([reynolds, nusselt]) =>
      nusseltCase(
        `cylinder in cross flow (Churchill-Bernstein), Re ${reynolds}, Pr 0.72`,
        "Churchill and Bernstein 1977, formula evaluated apart",
        nusselt,
        1e-6,
        LAST_DIGIT,
        () => nusseltChurchillBernsteinCylinder(reynolds, 0.72),
      ),
    ),
    exact("cylinder in cross flow (Zukauskas), Re 7992, Pr 0.707, Prs 0.69", 50.523612661934386, () =>
      nusseltZukauskasCylinder(7992, PRANDTL_STREAM, 0.69),
    ),
    exact("cylinder in cross flow (Zukauskas), Re 7992, Pr 42", 219.24837219760443, () =>
      nusseltZukauskasCylinder(7992, 42),
    ),
    ...ZUKAUSKAS.map((nusselt, i) =>
      exact(`cylinder in cross flow (Zukauskas), Re 10^(${i} * 6/7), Pr 0.707, Prs 0.69`, nusselt, () =>
        nusseltZukauskasCylinder(10 ** ((i * 6) / 7), PRANDTL_STREAM, 0.69),
      ),
    ),
    {
      ...nusseltCase(
        "cylinder in cross flow (Hilpert), Re 6071, Pr 0.7",
        EXAMPLE_7_3,
        37.3,
        0.1,
        "printed to 3 digits",
        () => nusseltHilpertCylinder(6071, 0.7),
      ),
      mark: "from memory",
    },
    exact("laminar plate, Re 1e5, Pr 0.7", 186.4378528752262, () => nusseltLaminarPlate(1e5, 0.7)),
    exact("laminar plate (Churchill-Ozoe), Re 1e5, Pr 0.7", 183.08600782591418, () =>
      nusseltChurchillOzoeLaminarPlate(1e5, 0.7),
    ),
    exact("turbulent plate (Kreith), Re 1.03e6, Pr 0.71", 2074.8740070411122, () =>
      nusseltKreithTurbulentPlate(1.03e6, 0.71),
    ),
    nusseltCase(
      "plate laminar then turbulent, Re 1e6, Pr 0.7",
      "Incropera eq. 7.38 evaluated apart",
      1299.48495,
      1e-5,
      LAST_DIGIT,
      () => nusseltPlate(1e6, 0.7),
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
