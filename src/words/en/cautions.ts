import type { CautionsFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

// A caution keeps the units that it was published in.

export const cautions: Phrases<CautionsFindings> = {
  "inspect-daily": () =>
    "Inspect wiring, pad and nearby hoses before the first flight of each day the heater was used; installation is work for a licensed mechanic.",
  unattended: () =>
    "Do not leave it running unattended or refuel it while it runs; keep an extinguisher at hand and the duct away from hoses, covers and upholstery.",
  "burner-outside": () =>
    "A burner makes carbon monoxide: never run it inside a closed hangar or cabin, and duct the hot air in.",
  "hot-air-limit": () =>
    "Keep air on ignition harness, hoses and rubber below 120 °C; too hot too fast ruins seals and belts.",
  "heater-sparks": () =>
    "No open element, brush motor or switch low in a hangar or near fuel openings: up to 0.45 m above the floor and within 1.5 m of engines and tanks is a hazardous zone.",
  "warm-gauges": () =>
    "Air in the cowl warms heads and gauges long before oil and bearings: warm readings alone do not mean a warm engine.",
  "hot-surface": () =>
    "The heater's surface may pass its limit: look at it while it heats, and keep oil, hoses and covers off it.",
  "in-cowl-rejected": () =>
    "Engine makers reject small electric heaters in the cowl opening: they warm the air and the gauges, not the oil.",
  "sump-only": () =>
    "Heat under the oil alone leaves cylinders and bearings cold and can drive moisture onto them.",
  "immersion-covered": () =>
    "Only with the element fully covered by oil; still cold oil cokes above about 1.6 W/cm² (10 W/in²).",
  cords: () => "Outdoor cords IP44 or better, never coiled, unplugged when not in use.",
  "battery-hydrogen": () =>
    "Never charge a frozen battery; a warm battery gives off hydrogen when charged: ventilate.",
  "remove-before-start": () =>
    "Take off cover and plugs and count them before starting; a forgotten plug overheats the engine.",
  "quilts-burn": () =>
    "Household quilts burn: keep them off heaters, exhaust and anything that glows, and tie them down.",
  "hot-air-in-turn": () =>
    "Blow 5 min in turn at sump, oil filter, external oil lines, cylinders, intake and oil cooler, at least 30 min in all.",
  "hot-air-feel": () =>
    "Feel the engine between turns: each part keeps its warmth before the next turn begins.",
  "hot-air-top": () => "Give the top of the engine the last 5 min.",
  "hot-air-wait": () =>
    "Stop and wait 5 min. Feel cylinders, case, cooler and lines by hand; the oil must run off the dipstick.",
  "hot-air-start": () => "Start at once after that. Stop the engine if there is no oil pressure within 10 s.",
  "congealed-oil": () =>
    "Gauges can read warm while oil in sump, filter and lines is still congealed; the damage may show many hours later.",
  "no-oil-pressure": () =>
    "Stop the engine at once when there is no oil pressure within 10 s; where the engine's handbook says otherwise, the handbook decides.",
  "crank-short": () =>
    "Crank 5 s at a time at most, start straight after the preheat and use external power where the handbook allows it.",
  "kick-back": () =>
    "A part-charged battery can let the engine kick back and break the starter drive; charge or warm it first.",
  "frozen-battery": () =>
    "Never charge, jump-start or load a battery that may be frozen or that bulges: it can burst. Acid burns: eye protection, gloves.",
  "remove-battery": () => "Take the battery out and keep it warm when it gets colder than -34 °C outside.",
  "cold-charging": () =>
    "A battery this cold takes up next to no charge, lithium is harmed by it: warm it before charging, and do not count on the alternator to refill it.",
  "intake-fire": () =>
    "Fuel pumped in with the throttle lies in the intake and burns on a backfire: keep cranking to draw the flames in, have somebody outside with an extinguisher.",
  "over-priming": () =>
    "Too much prime floods the induction, can lock a cylinder hydraulically and washes the oil off cold cylinder walls.",
  "frosted-plugs": () =>
    "When it fires and quits, the plugs frost over: no further tries until the engine has been warmed above 0 °C.",
  "prime-by-handbook": () => "How much prime, and how, is the handbook's to say.",
  "frozen-breather": () =>
    "Water from the case freezes in the breather: pressure builds up, a filler cap or a seal gives and the oil is lost. Check the breather at each preflight.",
  "short-ground-run": () =>
    "A short ground run makes more water than it drives off: fly an hour with the oil at 74 to 93 °C, or do not run it.",
  "live-propeller": () =>
    "Treat the propeller as live, also with everything switched off: nobody in its arc, chocks in, brakes set.",
  "running-engine": () =>
    "Never leave a running engine alone: a pilot at the controls, brakes and chocks on, nobody near the propeller, never in a hangar.",
  "run-if-sure": () =>
    "Run it only while a start is sure: covers and plugs off and counted before, on again after.",
  "hand-turning": () =>
    "Handbooks disagree about pulling the propeller through by hand: some ask for it, others warn that it wipes the oil off. Treat every propeller as live.",
  "burner-without-flue": () =>
    "A burner without a flue fills a closed hangar with carbon monoxide: never run it inside. Heat with electricity or a flue, or burn outside and duct the air in.",
  "water-in-hinges": () =>
    "Water in hinges, trim, gear or static ports freezes and blocks them: blow it out, and move every control to its stops before going out and before take-off.",
  "clear-ice": () =>
    "Rain on a skin or fuel below freezing turns to clear ice that cannot be seen: feel for it.",
  "cool-before-snow": () =>
    "With snow or rain outside, bring the skin below freezing first (doors open): a warm skin melts the snow, and the water freezes on.",
  "warm-fuel": () =>
    "Fuel warmed in the hangar keeps the skin over a tank warm long after roll-out and melts snow on it: better not hangar with much fuel in the wing.",
  "colder-climb": () =>
    "Free controls on the ground prove little: what is still liquid may freeze in colder air. If a control or trim stiffens, do not force it; go down into air above freezing.",
  "clean-wing": () =>
    "Frost, ice or snow on wing, tail, controls, propeller, windshield or static ports: no take-off until it is all off. There is no such thing as a little frost; do not polish it smooth.",
  "look-and-feel": () =>
    "A forecast is no inspection: look and feel with the bare hand, in light, just before take-off, whatever is shown here.",
  "sweating-cover": () =>
    "Wings sweat under covers and covers freeze to wings: fit them dry on a clean dry wing, take them off in time, look underneath.",
  roughness: () =>
    "Roughness of 0.4 mm already takes much lift and adds drag; clear ice and thin frost are hard to see.",
  "frost-under-tank": () =>
    "Frost under the wing at cold fuel tanks is accepted only where the authority and the aircraft's maker say so.",
  "dry-before-out": () =>
    "Be sure it is completely dry before it goes out: pooled water freezes again on critical surfaces and in critical places.",
  "brush-first": () =>
    "Brush or pull off loose snow before it comes in: melting it costs hours and wets the hangar.",
  "gentle-heat": () =>
    "Warm the hangar's air, no hotter than the hand bears; never blow hot air or pour hot water on a cold windshield: it crazes or cracks.",
  "hangar-sparks": () =>
    "Fans and heaters that can spark stay out of the zone up to 0.45 m above the floor and 1.5 m around engines and tanks.",
  "heater-too-small": () =>
    "The heater does not hold the setting: the air ends colder, and everything takes longer.",
  "damp-hangar": ({ humidity }, say) =>
    `The hangar gets damp (up to ${say.percent(humidity)} relative humidity): other engines and tools in it can rust, and drying slows. Air it, heat it, or sweep the water out.`,
};
