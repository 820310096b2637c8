/* Written by `npm run words` from the catalogue; change it there. */
import type { Message } from "../../message.ts";
export const noDesignEventIs: Message = { code: "physics/stiffness.noDesignEventIs" };
