import { everyScreenCases } from "./cases/everyScreen.ts";
import { leftPageCases } from "./cases/leftPage.ts";
import { wholeWayCases } from "./cases/wholeWay.ts";
import { firefoxEngine } from "./support/engines.ts";
import { onEngine } from "./support/onEngine.ts";

onEngine(firefoxEngine, everyScreenCases, leftPageCases, wholeWayCases);
