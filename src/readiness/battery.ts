import { tempBatteryLeast, tempChargeLeast } from "../starting/index.js";
import { type CriterionMaker, type CriterionSetting, lowest, named } from "./criterion.js";

function kindOf({ installation }: CriterionSetting) {
  return installation.battery.chemistry === "lithium-iron-phosphate" ? "lithium" : "lead";
}

export const battery: CriterionMaker = (setting) => {
  const { battery: fitted } = setting.installation;
  const kind = kindOf(setting);
  const charge = setting.charge ?? fitted.assumed_charge;
  const source =
    kind === "lithium"
      ? "battery makers' articles: discharge cut-off -20 °C"
      : "warmest of the published tables of freezing against specific gravity; gravity against charge: BCI table";
  return [lowest(named("battery", { kind, charge }), ["battery"], tempBatteryLeast(fitted, charge), source)];
};

export const batteryCharge: CriterionMaker = (setting) => {
  const kind = kindOf(setting);
  const source =
    kind === "lithium"
      ? "battery makers' articles: charge cut-off 0 °C"
      : "SAE 430132 (1943): at least 40 °F";
  const limit = tempChargeLeast(setting.installation.battery);
  return [{ ...lowest(named("battery-charge", { kind }), ["battery"], limit, source), advisory: true }];
};
