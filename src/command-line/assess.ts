import { assessCommand } from "./assessCommand.ts";
import { closePipeQuietly, terminal } from "./writing.ts";

closePipeQuietly();
process.exitCode = await assessCommand(process.argv.slice(2), terminal);
