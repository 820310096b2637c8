import { everyScreenCases } from "./cases/everyScreen.ts";
import { leftPageCases } from "./cases/leftPage.ts";
import { readingOrderCases } from "./cases/readingOrder.ts";
import { wholeWayCases } from "./cases/wholeWay.ts";
import { webKitEngine } from "./support/engines.ts";
import { onEngine } from "./support/onEngine.ts";

onEngine(webKitEngine, everyScreenCases, leftPageCases, wholeWayCases, readingOrderCases);
