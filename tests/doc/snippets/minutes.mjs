// The same by Node, of all dogs at once: what is a dog a line is answered by a line each.
import { spawnSync } from "node:child_process";

const answer = spawnSync("pelage", ["plan", "--roster", "dogs.jsonl"], { encoding: "utf8" });
for (const line of answer.stdout.trimEnd().split("\n")) {
    const { line: number, name, plan, error } = JSON.parse(line);
    const minutes = plan?.appointment_minutes; // not there where nothing is planned
    console.log(
        error ? `line ${number}: ${error[0].message}` : minutes ? `${name} ${Math.round(minutes)} minutes` : `${name}: not today`,
    );
}
